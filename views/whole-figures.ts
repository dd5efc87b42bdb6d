import type { EtaConfig } from 'eta';

/*
 * A figure, its unit and its interval stand in one line: `1.747 ± .006`, `.482 in`, `7/16-20 UNF`. Whatever a template
 * writes as text goes through here, so that no part has to think of it; attributes and drawings have no lines to break.
 */

const NUMBER = String.raw`[−-]?(?:\d+ \d+\/\d+|\d+\/\d+(?:-\d+)?|\d+(?:[.,]\d+)*|\.\d+)`;
const UNIT = String.raw`(?:lbf\/in|lbf·ft|N\/mm|N·m|in²?|mm²?|thou|lbf?|N|kN|deg(?: [BA]TDC)?|°[CF]?|degF|degC|%|rpm|turns?|g|kg|ft|s|min|px|UN[CFR]?[A-Z]*|tpi)(?![\p{L}\d])`;
const BETWEEN = `(?: ± | to | × |×)`;
const FIGURE = new RegExp(
  String.raw`(?<![\p{L}\d.,/#-])(?:± )?${NUMBER}(?:${BETWEEN}${NUMBER})*(?:[ \u00a0]${UNIT})?(?![\p{L}\d])`,
  'gu',
);
/** Where a line may break inside. */
const BREAKS = /[ /\-×]/;

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (letter) => ENTITIES[letter] ?? letter);

/** The class of a figure that stays whole; its one rule is in `styles/base.css`. */
const CLASS = 'num';

/** Text as HTML, its figures each in one piece. */
export function withWholeFigures(value: unknown): string {
  const text = String(value);
  if (!/\d/.test(text)) return escaped(text);
  let [from, html] = [0, ''];
  for (const { 0: figure, index } of text.matchAll(FIGURE)) {
    if (!BREAKS.test(figure)) continue;
    html += `${escaped(text.slice(from, index))}<span class="${CLASS}">${escaped(figure)}</span>`;
    from = index + figure.length;
  }
  return html + escaped(text.slice(from));
}

/** Elements that hold letters alone. */
const LETTERS_ONLY: ReadonlySet<string> = new Set([
  'title',
  'desc',
  'text',
  'tspan',
  'textarea',
  'option',
  'script',
  'style',
  'template',
  'pre',
  'code',
]);

/** Where a template stands after a piece of it. */
interface At {
  readonly inTag: boolean;
  readonly within: string | undefined;
}

/** Reads a piece of a template: whether what follows it is text, and in which element of letters alone. */
function after(piece: string, { inTag: open, within: element }: At): At {
  let [inTag, within] = [open, element];
  for (const [, closing, name, end] of piece.matchAll(/<(\/?)([a-z][a-z0-9]*)|(>)/gi)) {
    if (end !== undefined) inTag = false;
    if (name === undefined) continue;
    inTag = true;
    if (closing === '/' && name === within) within = undefined;
    else if (closing === '' && within === undefined && LETTERS_ONLY.has(name)) within = name;
  }
  return { inTag, within };
}

type Pieces = Parameters<NonNullable<EtaConfig['plugins'][number]['processAST']>>[0];

/** The template engine writes text by this instead of by the plain escape. */
export const wholeFigures = {
  processAST(pieces: Pieces): Pieces {
    let at: At = { inTag: false, within: undefined };
    return pieces.map((piece) => {
      if (typeof piece === 'string') {
        at = after(piece, at);
        return piece;
      }
      return piece.t === 'i' && !at.inTag && at.within === undefined
        ? { ...piece, t: 'r', val: `__eta.e.figures(${piece.val})` }
        : piece;
    });
  },
};

/** The plain escape, with the one for text beside it. */
export const escapeFunction = Object.assign((value: unknown): string => escaped(String(value)), {
  figures: withWholeFigures,
});
