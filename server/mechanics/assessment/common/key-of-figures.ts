/** What an answer is of: a name and its figures in SI, whatever units the call speaks; other figures are another question. */
export const keyOfFigures = (name: string, ...figures: readonly number[]): string =>
  [name, ...figures.map((figure) => Number(figure.toPrecision(6)))].join('-').replaceAll('.', '_');
