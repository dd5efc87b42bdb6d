import table from '../../../../seeds/ordinary-sizes.json' with { type: 'json' };
import { shortFigure } from '../../../../shared/quantities/short-length.ts';
import { isUnit, UNITS } from '../../../../shared/quantities/units.ts';
import { isPartSize } from '../../../../shared/schemas/part-words.ts';
import { wordFor } from '../../identify/compare.ts';
import { halfWidthOf } from '../../identify/how-read.ts';
import { IDENTIFICATION_MODEL } from '../../identify/model.ts';
import { toolWithin } from '../../identify/tools.ts';
import { IN } from '../../kit/si.ts';
import type { OrdinaryDetail, OrdinarySize } from './detail.ts';
import { type CountedReading, sized } from './doubts.ts';
import { nameOf } from './size-said.ts';

interface Bands {
  readonly agrees: { readonly below: number; readonly above: number };
  readonly cannotTell: { readonly below: number; readonly above: number };
}

interface Ordinary {
  readonly nominals: readonly { readonly name: string; readonly value: number; readonly unit: string }[];
  readonly range?: { readonly least: number; readonly most: number };
  readonly agrees?: Bands['agrees'];
  readonly cannotTell?: Bands['cannotTell'];
}

const SIZES: Readonly<Record<string, Ordinary>> = table.sizes;

function bandsOf(kind: string, { agrees, cannotTell }: Ordinary): Bands {
  if (isPartSize(kind)) return IDENTIFICATION_MODEL.sizes[kind];
  if (agrees === undefined || cannotTell === undefined)
    throw new Error(`seeds/ordinary-sizes.json: no bands for ${kind}`);
  return { agrees, cannotTell };
}

function si(value: number, unit: string): number {
  if (!isUnit(unit)) throw new Error(`seeds/ordinary-sizes.json: no unit ${unit}`);
  return value * UNITS[unit].toSi;
}

/** Widths that assemblies are ordinarily made with [m]. */
export const ordinaryWidths = (): number[] =>
  (SIZES['width-across-trunnion']?.nominals ?? []).map(({ value, unit }) => si(value, unit));

/** Stems that are ordinary, the thinnest first [m]. */
export const ordinaryStems = (): { readonly name: string; readonly size: number }[] =>
  (SIZES['stem-diameter']?.nominals ?? [])
    .map(({ name, value, unit }) => ({ name, size: si(value, unit) }))
    .toSorted((a, b) => a.size - b.size);

/** `.004 under`, `.016 over` */
export function offsetSaid(offset: number): string {
  const size = Math.abs(offset);
  const figure = shortFigure(size);
  return Number((size / IN).toFixed(4)) === 0 ? 'level' : `${figure} ${offset < 0 ? 'under' : 'over'}`;
}

/** Beside those in reach the nearest of the others is shown, as differing. */
const NEAREST = 2;

function againstNominals(reading: CountedReading & { size: number }, ordinary: Ordinary): OrdinarySize[] {
  const { kind, size } = reading;
  const bands = bandsOf(kind, ordinary);
  const excess = Math.max(0, halfWidthOf(reading) / IN - toolWithin(kind, 'caliper'));
  const all = ordinary.nominals.map(({ name, value, unit }): OrdinarySize => {
    const madeFor = si(value, unit);
    const word = wordFor(bands, madeFor / IN, size / IN, excess);
    // Nobody measured a guess: it is near a size or far from it, and never settles one.
    return {
      name,
      madeFor,
      offset: size - madeFor,
      word: reading.tool === 'guess' && word === 'agrees' ? 'cannot-tell' : word,
    };
  });
  const near = all.toSorted((a, b) => Math.abs(a.offset) - Math.abs(b.offset));
  const shown = near.filter(({ word }, index) => index < NEAREST || word !== 'differs');
  const agreeing = shown.filter(({ word }) => word === 'agrees');
  // Two sizes that both agree cannot be told apart by it.
  if (agreeing.length < 2) return shown;
  return shown.map((each) => (each.word === 'agrees' ? { ...each, word: 'cannot-tell' } : each));
}

function againstRange({ size }: { size: number }, { range }: Ordinary): Pick<OrdinaryDetail, 'range'> {
  if (range === undefined) return {};
  const [low, high] = [range.least * IN, range.most * IN];
  return { range: { low, high, word: size >= low && size <= high ? 'agrees' : 'differs' } };
}

/** Sizes that are read against those that rockers are ordinarily made with, whatever the catalogue has. */
export const ordinaryOf = (readings: readonly CountedReading[]): OrdinaryDetail[] =>
  Object.entries(SIZES).flatMap(([kind, ordinary]) =>
    sized(readings, kind).map(
      (reading): OrdinaryDetail => ({
        entryId: reading.id,
        kind,
        title: nameOf(kind),
        readAs: reading.readAs,
        sizes: ordinary.nominals.length === 0 ? [] : againstNominals(reading, ordinary),
        ...againstRange(reading, ordinary),
      }),
    ),
  );
