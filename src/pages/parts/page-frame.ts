import { type Child, element } from './dom';

/** What the editor gives to a page. */
export interface PageEditor<Message, State> {
  postMessage(message: Message): void;
  getState(): State | undefined;
  setState(state: State): void;
}

declare function acquireVsCodeApi(): PageEditor<unknown, unknown>;

/** How far a page is scrolled, as it is kept over a reload. */
interface KeptScroll {
  readonly scroll?: number;
}

/** What all pages are alike in: drawn anew as a whole, they keep the keyboard's focus and the place in sight. */
export class PageFrame<Message, State extends KeptScroll> {
  readonly editor: PageEditor<Message, State>;
  readonly #root: HTMLElement;
  readonly #state: () => Omit<State, 'scroll'> | undefined;
  /** Where the page stood before it was loaded anew; until it has been drawn once. */
  #scrollTo: number | undefined;
  #scrolling: number | undefined;

  /**
   * @param state What the page is to find again after it was loaded anew; `undefined` until it was told what to show.
   * @param className of the page as a whole
   */
  constructor(state: () => Omit<State, 'scroll'> | undefined, className?: string) {
    this.editor = acquireVsCodeApi() as PageEditor<Message, State>;
    this.#state = state;
    this.#root = element('main', { class: className });
    document.body.append(this.#root);
    this.#scrollTo = this.editor.getState()?.scroll;
    window.addEventListener('scroll', () => {
      window.clearTimeout(this.#scrolling);
      this.#scrolling = window.setTimeout(() => this.keep(), 200);
    });
  }

  /** Hands the page's state to the editor. Also done after each drawing, and when the person has scrolled. */
  keep(): void {
    const state = this.#state();
    if (state) this.editor.setState({ ...state, scroll: document.documentElement.scrollTop } as State);
  }

  /**
   * Puts everything on the page anew.
   * @param focus Key of what is to have the keyboard's focus; what has it now when left out.
   * @param draw Fills what can only be filled on the page, such as charts.
   */
  show(
    make: () => readonly Child[],
    { focus, draw }: { readonly focus?: string | undefined; readonly draw?: () => void } = {},
  ): void {
    const focused = focus ?? document.activeElement?.getAttribute('data-key') ?? undefined;
    const scroll = document.documentElement.scrollTop;
    const children = make();
    this.#root.replaceChildren(...children.filter((child) => child !== undefined));
    draw?.();
    for (const candidate of Array.from(this.#root.querySelectorAll<HTMLElement>('[data-key]'))) {
      if (focused !== undefined && candidate.dataset.key === focused)
        candidate.focus({ preventScroll: true });
    }
    document.documentElement.scrollTop = this.#scrollTo ?? scroll;
    this.#scrollTo = undefined;
    this.keep();
  }

  /** Hears what the editor tells the page, and says that it listens. */
  listen<Told>(hear: (told: Told) => void): void {
    window.addEventListener('message', ({ data }: MessageEvent<Told>) => hear(data));
    this.editor.postMessage({ type: 'ready' } as Message);
  }
}
