/** Colours of the editor's theme, as a canvas needs them: it knows no style sheets. */
export interface ThemeColours {
  readonly text: string;
  readonly background: string;
  readonly grid: string;
  readonly left: string;
  readonly right: string;
  readonly none: string;
  readonly target: string;
  readonly session: string;
  readonly load: string;
  readonly font: string;
}

/** The colours that hold at this moment. */
export function themeColours(): ThemeColours {
  // An element resolves every way of writing a colour into one that a canvas reads.
  const probe = document.createElement('span');
  document.body.append(probe);
  const colour = (name: string): string => {
    probe.style.color = `var(--page-${name})`;
    return getComputedStyle(probe).color;
  };
  const colours = {
    text: colour('text'),
    background: colour('background'),
    grid: colour('grid'),
    left: colour('left'),
    right: colour('right'),
    none: colour('none'),
    target: colour('target'),
    session: colour('session'),
    load: colour('load'),
    font: getComputedStyle(document.body).fontFamily,
  };
  probe.remove();
  return colours;
}

/** Calls `changed` when the editor puts another theme on the page: it changes the classes and styles of its frame. */
export function onThemeChange(changed: () => void): void {
  let before = JSON.stringify(themeColours());
  const observer = new MutationObserver(() => {
    const now = JSON.stringify(themeColours());
    if (now === before) return;
    before = now;
    changed();
  });
  for (const target of [document.body, document.documentElement]) {
    observer.observe(target, {
      attributes: true,
      attributeFilter: ['class', 'style', 'data-vscode-theme-id'],
    });
  }
}
