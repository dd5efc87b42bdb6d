/** Whole numbers in a text such as `1-8-4-3-6-5-7-2` or `1 3 5 7 / 2 4 6 8`. */
function numbersIn(text: string): number[] {
  return (text.match(/\d+/g) ?? []).map(Number);
}

/**
 * Cylinders in the order of a text, when it names each cylinder of the engine once; else as they are numbered.
 * Digits that run together (`18436572`) are taken one by one up to nine cylinders.
 */
export function cylinderOrder(text: string | undefined, cylinders: number): number[] {
  const numbered = Array.from({ length: cylinders }, (_, index) => index + 1);
  if (text === undefined) return numbered;
  const apart = numbersIn(text);
  const read = apart.length === 1 && cylinders <= 9 ? [...String(apart[0])].map(Number) : apart;
  const fits = read.length === cylinders && numbered.every((cylinder) => read.includes(cylinder));
  return fits ? read : numbered;
}

/** Cylinders bank by bank, where the text parts them (`1 3 5 7 / 2 4 6 8`) and names each cylinder once. */
export function banksOf(text: string | undefined, cylinders: number): number[][] {
  const banks = (text ?? '').split(/[/;|\n]/).map(numbersIn);
  const all = banks.flat();
  const fits = all.length === cylinders && new Set(all).size === cylinders && all.every((each) => each >= 1);
  return fits && banks.length > 1 ? banks : [];
}
