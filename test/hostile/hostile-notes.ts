/** Words that someone may write, or paste, to make a program do what nobody asked for: by what they try. */
export const hostileWords: Readonly<Record<string, string>> = {
  script: '<script>hostile()</script>',
  'an image that runs a script': '<img src=x onerror=hostile()>',
  'the end of an attribute': '"><svg onload=hostile()>',
  'the end of an attribute in the other marks': "'><b onmouseover='hostile()'>",
  'the end of a style': '</style></title></textarea><script>hostile()</script>',
  'the end of a comment': '--><script>hostile()</script><!--',
  'a link to a command': '[look](command:hostile.run)',
  'a link to a command in angles': '<command:hostile.run>',
  'a link to a script': '[look](javascript:hostile())',
  'an image from elsewhere': '![look](http://192.0.2.1/x.png)',
  'a link of HTML': '<a href="command:hostile.run">look</a>',
  'a reference to a link': '[look][x] [x]: command:hostile.run',
  'the end of code': '``` `x` ```` [look](command:hostile.run)',
  'cells of a table': 'a | b || c \\| d \\\\| e',
  'an icon with a command': '$(link) $(command:hostile.run)',
  'places of a template': '{0} {1} %s $'.concat('{hostile()}'),
  'a formula': '=HYPERLINK("http://192.0.2.1/";"look")',
  'a formula with a sign': '+1+hostile()',
  'a formula with another sign': '-1+hostile|x',
  'a formula of an older kind': '@SUM(1)',
  'colours of a terminal': '\u001b[2J\u001b]0;hostile\u0007\u009b31mred',
  'words turned around': 'photo\u202egpj.exe\u202c \u2066hostile\u2067',
  'the end of an event': '\\nEND:VEVENT\\nBEGIN:VEVENT\\nSUMMARY:hostile;X=1:2,3',
  'lines of other scripts': 'one\u2028two\u2029three\u0085four',
  'a folder further up': '../../../../hostile.md',
  'an absolute path': '/etc/hostile.md',
  'a path of another system': 'C:\\hostile\\x.md',
  'a file of another machine': '\\\\192.0.2.1\\hostile\\x.md',
  'an address of a file': 'file:///etc/hostile.md',
  'names that objects have': '__proto__ constructor toString',
};

/** A word that asks for nothing; what is made of it shows how it is meant to be. */
export const harmlessWord = 'plain';

/**
 * A journal with `words` in every field, name, title, remark, body and file name in which they can stand.
 * @param words the whole of them, for places that take blanks; names of one word get them without
 */
export function notesWith(words: string): Readonly<Record<string, string>> {
  const quoted = `"${words.replaceAll('"', '')}"`;
  const name = words.replace(/[\s"]+/g, '');
  const remark = `-- ${words}`;
  return {
    'journal.md': [
      `---\ntitle: ${words}\n---`,
      `# ${words}`,
      '',
      words,
      '',
      `- #athlete ${quoted}`,
      '- #zone Europe/Lisbon',
      `- #kind ${name} like:skill`,
      `- #free mon tue 18:00-21:00 where:${name} with:${name} ${remark}`,
      `- #busy 2026-02-28 ${remark}`,
      `- #event 2026-02-26 ${quoted} for:split ${remark}`,
      `- #rule ${name} gap:24h`,
      `- #rule ${name} nonsense:${name}`,
      `- #routine own flexibility 75min regions:${name} ${remark}`,
      `  - ${words}`,
      `- #routine ${name} skill 30min`,
      `  - ${words}`,
      '',
    ].join('\n'),
    'goals.md': [
      `- #goal split by:2026-06-14 ${quoted} ${remark}`,
      `- #why ${words}`,
      `- #metric gap from:14cm to:0cm ${remark}`,
      `- #metric ${name} from:14cm to:0cm ${remark}`,
      `- [ ] #step ${name} by:2026-03-15 metric:${name} to:10cm ${remark}`,
      `- #need flexibility 2/week 75min 7/10 with:${name} where:${name} routine:own ${remark}`,
      `- #goal ${name} by:2026-05-01 ${remark}`,
      '- #need flexibility 1/week',
      '',
    ].join('\n'),
    '2026-02-24 day.md': [
      `# ${words}`,
      `- [x] #session flexibility 18:30 75min 7/10 for:split for:${name} with:${name} where:${name} routine:own ${remark}`,
      `  - ${words}`,
      `- [ ] #session ${name} 10:00 30min skipped:${name} ${remark}`,
      `- #measure split gap 9cm photo:${quoted} ${remark}`,
      `- #measure split ${name} 9cm photo:${name} ${remark}`,
      `- #measure ${name} ${name} 9cm photo:${quoted}`,
      `- #sore ${name} 3/10 ${remark}`,
      `- #pain ${name} 5/10 ${remark}`,
      `- #win ${words}`,
      `- #${name} ${words}`,
      '',
    ].join('\n'),
    '2026-02-27.md': `- [ ] #session flexibility 18:30 75min 7/10 for:split with:${name} where:${name} ${remark}\n  - ${words}\n`,
  };
}
