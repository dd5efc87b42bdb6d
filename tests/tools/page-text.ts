const ENTITIES: Readonly<Record<string, string>> = {
  '&lt;': '<',
  '&gt;': '>',
  '&amp;': '&',
  '&quot;': '"',
  '&#39;': "'",
};

/** A page without the tags that only keep a figure in one line: its sentences read as they were written. */
export const asWritten = (html: string): string => html.replace(/<span class="num">([^<]*)<\/span>/g, '$1');

/** What a person reads of a page, in one line: tags that stand within a sentence vanish, others are a space. */
export const textOf = (html: string): string =>
  asWritten(html)
    .replace(/<(script|style|template)\b[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(?:lt|gt|amp|quot|#39);/g, (entity) => ENTITIES[entity] ?? entity)
    .replace(/[\s\u00a0]+/g, ' ');

/** The same without what only a drawing says. */
export const textBesideDrawings = (html: string): string => textOf(html.replace(/<svg[\s\S]*?<\/svg>/g, ' '));
