/*
 * Figures in inches, thousandths or pounds on a face of a call that speaks millimetres. What somebody typed is theirs
 * and stays; a thread is named in inches whatever the call speaks.
 */

const WITH_UNIT = /(?<![\w.])[−-]?(?:\d*\.)?\d+ ?(?:in|thou|lb|lbf|lbf\/in)(?![\w/-])/;
/** `.018`: the trade writes inches without the zero before the point, and millimetres with it. */
const BARE = /(?<![\w.\d/])\.\d{3}(?!\d)/;

/** The words with everything out of them that may be in inches, or is a ratio. */
const withoutTyped = (line: string): string =>
  line
    .replaceAll(/\(as typed [^)]*\)/g, '')
    .replaceAll(/typed “[^”]*”/g, '')
    .replaceAll(/\d?\.\d{3} ± \.\d{3}(?! in)/g, '')
    .replaceAll(/\.\d{3} of ratio/g, '')
    .replaceAll(/(?:by|makes?) \.\d{3}(?= it)/g, '');

export const tellsInches = (line: string): boolean =>
  WITH_UNIT.test(withoutTyped(line)) || BARE.test(withoutTyped(line));
