import { describe, expect, test } from 'vitest';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { isObject } from '../../shared/member.ts';
import { readBetween, saysBetween } from '../../shared/quantities/read-between.ts';
import { readNumber } from '../../shared/quantities/read-number.ts';
import { type Dimension, isUnit, UNITS } from '../../shared/quantities/units.ts';
import { buildOf } from '../mechanics/assessment/laws/builds.ts';
import { correctionFacesOf, facesOf, partFacesOf } from '../tools/call-faces.ts';
import { callOf, recordOf } from '../tools/record-of-evidence.ts';

/*
 * What a form fills in from an earlier entry is sent again as it stands: a field that its own reader refuses would hold up
 * whoever sends it. Entries are told with what was typed beside what it was understood as, `11/32 in = .34375 in`.
 */

/** Builds of every kind of entry, each told in one of the two units. */
const BUILDS = 10;
const SAID = 'as it was said';

/** The same record with every entry said in words of its own; only value and unit can be read again. */
function saidInWords(what: unknown): unknown {
  if (Array.isArray(what)) return what.map(saidInWords);
  if (what instanceof Date || what instanceof Map || !isObject(what)) return what;
  const parts = Object.fromEntries(Object.entries(what).map(([name, part]) => [name, saidInWords(part)]));
  const isEntry = typeof parts.typed === 'string' && typeof parts.unit === 'string' && isUnit(parts.unit);
  return isEntry && typeof parts.readAs === 'string'
    ? { ...parts, typed: SAID, readAs: `${SAID} = ${parts.readAs}` }
    : parts;
}
const isRecord = (said: unknown, like: BuildRecord): said is BuildRecord =>
  isObject(said) && Object.keys(like).every((name) => name in said);
function inWords(record: BuildRecord): BuildRecord {
  const said = saidInWords(record);
  if (!isRecord(said, record)) throw new Error('no record is left');
  return said;
}

/** A stem as it is told over the phone. */
const STEM = { typed: '11/32', readAs: '11/32 in = .34375 in', value: 0.34375, unit: 'in' } as const;
const withStems = (record: BuildRecord): BuildRecord => ({
  ...record,
  tipMarks: record.tipMarks.map((mark) => ({ ...mark, stem: mark.stem ?? STEM })),
});

const isDimension = (text: string): text is Dimension =>
  Object.values(UNITS).some(({ dimension }) => dimension === text);

const partOf = (input: string, name: string): string =>
  new RegExp(`\\b${name}="([^"]*)"`).exec(input)?.[1] ?? '';
const inputsOf = (html: string): string[] =>
  [...html.matchAll(/<input\b[^>]*\bdata-reads="[^"]*"[^>]*>/g)].map(([input]) => input);

/** Names of the fields for quantities that come filled in. */
const filledIn = (html: string): string[] =>
  inputsOf(html).flatMap((input) => (partOf(input, 'value') === '' ? [] : [partOf(input, 'name')]));

/** Fields that come filled in with what nobody can read, by the page and form they stand in. */
function unreadable(face: string, html: string): string[] {
  return inputsOf(html).flatMap((input) => {
    const [value, name, reads] = [partOf(input, 'value'), partOf(input, 'name'), partOf(input, 'data-reads')];
    if (value === '') return [];
    const read = saysBetween(value)
      ? readBetween(value)
      : isDimension(reads)
        ? readNumber(value, { kind: reads })
        : undefined;
    return read?.ok === true ? [] : [`${face} ${name}: ${value}`];
  });
}

describe('a field that comes filled in is read by its own schema', () => {
  const builds = Array.from({ length: BUILDS }, (_, index) => buildOf(index + 1)).map((evidence) => ({
    record: inWords(withStems(recordOf(evidence))),
    callId: callOf(evidence).id,
  }));

  test('on every page of a call, told in inches and in millimetres', () => {
    const faces = builds.flatMap(({ record, callId }, at) => {
      const units = at % 2 === 0 ? 'inch' : 'metric';
      const told = { ...record, build: { ...record.build, units } } as const;
      return [...facesOf(told, callId), ...partFacesOf(told, callId)];
    });
    expect([...new Set(faces.flatMap(({ name, html }) => unreadable(name, html)))]).toEqual([]);
    const filled = new Set(faces.flatMap(({ html }) => filledIn(html)));
    for (const name of ['stem', 'card', 'cardDuration', 'lashFound', 'lashSetting', 'pivotToTip'])
      expect([...filled], name).toContain(name);
  });

  test('on the page of every entry that is put right', () => {
    const faces = builds.flatMap(({ record, callId }) => correctionFacesOf(record, callId));
    const paths = new Set(faces.map(({ name }) => name));
    expect(paths.size).toBeGreaterThanOrEqual(5);
    expect(faces.flatMap(({ name, html }) => unreadable(name, html))).toEqual([]);
    const filled = new Set(faces.flatMap(({ html }) => filledIn(html)));
    for (const name of ['width', 'stem', 'pushrod', 'lashSetting', 'atLobeLift'])
      expect([...filled], name).toContain(name);
    // A list of rows is no field of its own, and is read line by line.
    expect(
      faces.filter(({ html }) =>
        html.replace(/<p[\s\S]*?<\/p>/g, '').match(/<textarea[^>]*>[^<]*as it was said/),
      ),
    ).toEqual([]);
  });

  test('it finds one that is not', () => {
    const field = (value: string) => `<input name="stem" value="${value}" data-reads="length">`;
    expect(unreadable('desk', field('11/32 in = .34375 in'))).toEqual(['desk stem: 11/32 in = .34375 in']);
    expect(unreadable('desk', field('.34375 in'))).toEqual([]);
  });
});
