/** Whole numbers in a text such as `1-8-4-3-6-5-7-2` or `1 3 5 7 / 2 4 6 8`. */
function numbersIn(text: string): number[] {
  return ((/\d/.test(text) ? text : withFigures(text)).match(/\d+/g) ?? []).map(Number);
}

/** Cylinders as they are said aloud; the most that one order is read for. */
const SPOKEN: readonly string[] = [
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
];

/** `one eight four` as `1 8 4`. */
const withFigures = (text: string): string =>
  text.replaceAll(/[a-z]+/gi, (word) => {
    const at = SPOKEN.indexOf(word.toLowerCase());
    return at < 0 ? word : String(at + 1);
  });

/**
 * Cylinders in the order of a text, when it names each cylinder of the engine once; else nothing. Digits that run
 * together (`18436572`) are taken one by one up to nine cylinders. Without a count it must name each from 1 on.
 */
export function readOrder(text: string, cylinders: number | undefined): number[] | undefined {
  const apart = numbersIn(text);
  const [only = 0, ...others] = apart;
  const digits = [...String(only)].map(Number);
  const read = others.length === 0 && (cylinders ?? digits.length) <= 9 ? digits : apart;
  const wanted = cylinders ?? read.length;
  if (read.length !== wanted || wanted > 16) return undefined;
  return Array.from({ length: wanted }, (_, index) => index + 1).every((each) => read.includes(each))
    ? read
    : undefined;
}

/** The same; where the text names them not, as they are numbered. */
export function cylinderOrder(text: string | undefined, cylinders: number): number[] {
  const read = text === undefined ? undefined : readOrder(text, cylinders);
  return read ?? Array.from({ length: cylinders }, (_, index) => index + 1);
}

/** What banks are kept apart by, in the order in which it is tried; within a bank it is any other of them. */
const BETWEEN_BANKS = [/[/;|\n]/, /,/, /\s[-–]\s/, /[a-z]+/i, /\s+/] as const;

/** The numbers of a text bank by bank, where something parts it into banks of more than one cylinder; else one bank. */
function banksIn(text: string): number[][] {
  const ways = BETWEEN_BANKS.map((between) =>
    text
      .split(between)
      .map(numbersIn)
      .filter((bank) => bank.length > 0),
  );
  return (
    ways.find((banks) => banks.length > 1 && banks.every((bank) => bank.length > 1)) ?? [numbersIn(text)]
  );
}

/** Where each cylinder stands, of a text such as `1 3 5 7 / 2 4 6 8`: `bank 2, 3rd`; nothing where it is not read. */
export function standsAt(text: string | undefined, cylinder: number, cylinders: number): string | undefined {
  if (text === undefined || readOrder(text, cylinders) === undefined) return undefined;
  const banks = banksIn(text);
  const bank = banks.findIndex((numbers) => numbers.includes(cylinder));
  const at = banks[bank]?.indexOf(cylinder) ?? -1;
  if (at < 0) return undefined;
  const place = `${at + 1}${['st', 'nd', 'rd'][at] ?? 'th'} from the front`;
  return banks.length > 1 ? `bank ${bank + 1}, ${place}` : place;
}

/** Cylinders bank by bank, where the text parts them (`1 3 5 7 / 2 4 6 8`) and names each cylinder once. */
export function banksOf(text: string | undefined, cylinders: number): number[][] {
  const banks = banksIn(text ?? '');
  const all = banks.flat();
  const fits = all.length === cylinders && new Set(all).size === cylinders && all.every((each) => each >= 1);
  return fits && banks.length > 1 ? banks : [];
}
