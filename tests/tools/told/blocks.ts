/** Texts under headings: the first word of a heading is what the text is of. */
export type Blocks = ReadonlyMap<string, string>;

export function blocksIn(text: string): Map<string, string> {
  const blocks = text.split('\n\n').map((block) => block.trim().split('\n'));
  return new Map(blocks.map(([heading = '', ...lines]) => [heading.split(' ')[0] ?? '', lines.join('\n')]));
}

/** As they are kept, each with more beside its heading where something is given. */
export function blocksText(blocks: Blocks, beside: ReadonlyMap<string, string> = new Map()): string {
  const texts = [...blocks].map(([of, lines]) =>
    `${of} ${beside.get(of) ?? ''}`.trimEnd().concat(`\n${lines}`),
  );
  return `${texts.join('\n\n')}\n`;
}
