import temml from 'temml';

/** Where a line of equations may be broken: at a wide space, or at a space after a comma, outside every brace. */
function linesOf(tex: string): string[] {
  const lines: string[] = [];
  let depth = 0;
  let from = 0;
  const token = /\\begin\b|\\end\b|\\[{}]|[{}]|,\s*\\quad\b\s*|,?\s*\\qquad\s*/g;
  for (const match of tex.matchAll(token)) {
    const [text] = match;
    if (text === '{' || text === '\\begin') depth += 1;
    else if (text === '}' || text === '\\end') depth -= 1;
    else if (text.endsWith('}') || text.endsWith('{')) continue;
    else if (depth === 0) {
      lines.push(tex.slice(from, match.index));
      from = match.index + text.length;
    }
  }
  return [...lines, tex.slice(from)].filter((line) => line.trim() !== '');
}

/**
 * An equation as MathML, one piece for each line, so that a narrow screen can break between them. The style
 * attributes are taken off because the content policy lets no inline style through; the sheet has them by class.
 */
export function equationLines(tex: string): readonly string[] {
  return linesOf(tex).map((line) =>
    temml.renderToString(line, { displayMode: true, throwOnError: true }).replace(/ style="[^"]*"/g, ''),
  );
}
