import { type DialStand, dialWords } from '../../shared/quantities/dial-words.ts';
import { speaking } from '../../shared/quantities/spoken-units.ts';
import { toSi } from '../../shared/quantities/units.ts';
import { readTyped } from './echo.ts';

/** What a dial said before anything was typed. */
const drawn = new WeakMap<HTMLElement, { readonly heading: string; readonly said: string }>();

const INCH = toSi({ value: 1, unit: 'in' });

/** How the dial is drawn. */
function standOf({ dataset }: HTMLElement): DialStand {
  const { runs, perTurn, gone, started = '', unit } = dataset;
  return {
    perTurn: Number(perTurn),
    gone: Number(gone),
    runs: runs === 'clockwise' ? 'clockwise' : 'anticlockwise',
    startedAt: started === '' ? undefined : Number(started),
    unit: unit === 'mm' ? 'mm' : 'in',
  };
}

/** Turns one hand by so many degrees from where it was drawn. */
function turnHand(dial: Element, of: 'needle' | 'small', degrees: number): void {
  const hand = dial.querySelector<SVGGElement>(`[data-hand="${of}"]`);
  if (hand === null) return;
  const { x = '0', y = '0' } = hand.dataset;
  hand.setAttribute('transform', `rotate(${degrees.toFixed(2)} ${x} ${y})`);
}

function put(within: Element, part: string, text: string): void {
  const place = within.querySelector(part);
  if (place !== null) place.textContent = text;
}

/** Hands, words and text equivalent say the same. */
function show(dial: HTMLElement, gone: number): void {
  const from = standOf(dial);
  const to = { ...from, gone };
  const words = speaking(dial.dataset.speaks === 'metric' ? 'metric' : 'inch', () => dialWords(to));
  const past = ({ perTurn, gone: length }: DialStand) => length / perTurn;
  turnHand(dial, 'needle', (from.runs === 'clockwise' ? 1 : -1) * (past(to) - past(from)) * 360);
  turnHand(dial, 'small', (words.position - dialWords(from).position) * 36);
  for (const of of ['total', 'hand', 'small'] as const) put(dial, `[data-dial-line="${of}"] text`, words[of]);
  put(dial, 'desc', words.desc);
  const rows = dial.querySelectorAll('.drawing-table tbody tr');
  words.rows.forEach(([, standsAt], at) => {
    const row = rows[at];
    if (row !== undefined) put(row, '.cell-value > span', standsAt);
  });
}

/** The dial shows what is being typed, as it is read; what can’t be read leaves the last pass on it. */
function follow(dial: HTMLElement, field: HTMLInputElement): void {
  const heading = dial.querySelector('h3');
  const said = dial.querySelector('[data-dial-said]');
  if (heading === null || said === null) return;
  const before = drawn.get(dial) ?? { heading: heading.textContent, said: said.textContent };
  drawn.set(dial, before);
  const read = readTyped(field)?.read;
  const gone = read?.ok && read.unit !== undefined ? toSi({ value: read.value, unit: read.unit }) / INCH : -1;
  const isTyped = read?.ok === true && gone >= 0;
  show(dial, isTyped ? gone : standOf(dial).gone);
  heading.textContent = isTyped ? 'The dial should look like this' : before.heading;
  said.textContent = isTyped ? `As typed: ${read.readAs}` : before.said;
}

/** A dial beside the field of its reading follows what is typed there. */
export function followTyping(): void {
  document.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    for (const dial of document.querySelectorAll<HTMLElement>(`[data-follows="${CSS.escape(target.id)}"]`))
      follow(dial, target);
  });
}
