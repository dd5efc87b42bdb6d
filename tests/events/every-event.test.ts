import { beforeAll, expect, test } from 'vitest';
import { dataOf, eventsOf, happened } from '../../server/events/read-events.ts';
import { READING_EVENTS } from '../../server/records/readings/events.ts';
import { ALL_EVENTS } from '../../server/records/whole-build/record-parts.ts';
import { WORKING_EVENTS } from '../../server/records/workings/events.ts';
import { TOLD } from '../../server/steps/index.ts';
import { sourceFiles } from '../tools/source-files.ts';

/** Each event that any file of the service defines, with its file. */
const defined: { file: string; name: string }[] = [];

const isDefinition = (value: unknown): value is { name: string } =>
  typeof value === 'object' && value !== null && 'name' in value && 'data' in value;

beforeAll(async () => {
  for (const { path: file, text } of await sourceFiles('server', ['.ts'])) {
    if (!/= defineEvents\(/.test(text)) continue;
    const module: Record<string, unknown> = await import(new URL(`../../${file}`, import.meta.url).href);
    const definitions = Object.values(module).flatMap((set) =>
      Object.values(Object(set)).filter(isDefinition),
    );
    expect(definitions.length, `${file} exports the events it defines`).toBeGreaterThan(0);
    defined.push(...definitions.map(({ name }) => ({ file, name })));
  }
  expect(defined.length, 'there must be events for this to mean anything').toBeGreaterThan(25);
});

test('every event that is defined anywhere is among all events', () => {
  expect(defined.filter(({ name }) => !Object.hasOwn(ALL_EVENTS, name))).toEqual([]);
  expect(Object.keys(ALL_EVENTS).sort()).toEqual(defined.map(({ name }) => name).sort());
});

test('no two events have one name, and each name is kebab-case', () => {
  const names = defined.map(({ name }) => name);
  expect(names.filter((name, place) => names.indexOf(name) !== place)).toEqual([]);
  expect(names.filter((name) => !/^[a-z]+(-[a-z]+)*$/.test(name))).toEqual([]);
});

test('every event that is defined anywhere has its line on the tape', () => {
  expect(defined.filter(({ name }) => !Object.hasOwn(TOLD, name))).toEqual([]);
});

const at = { seq: 1, by: 'B', byKind: 'staff', at: new Date(0) };
const kept = (kind: string, data: object) => ({ ...at, kind, data });
const working = kept('working-kept', { computation: 'adjuster', title: 'Adjuster' });
const unread = kept('working-kept', { computation: 7 });

test('events of one kind are read by their definition; one that can’t be read throws nothing and counts by name', () => {
  const events = [kept('link-made', {}), working, unread, kept('working-kept', [])];
  expect(eventsOf(events, WORKING_EVENTS['working-kept'])).toEqual([working]);
  expect(happened([unread], WORKING_EVENTS['working-kept'])).toBe(true);
  expect(happened([unread], READING_EVENTS['reading-kept'])).toBe(false);
  expect(dataOf(working, READING_EVENTS['reading-kept'])).toBeUndefined();
});

test('what an event has beyond its definition does not keep it from being read, nor is it taken from the event', () => {
  const event = kept('working-kept', { ...working.data, surplus: 1 });
  expect(dataOf(event, WORKING_EVENTS['working-kept'])).toEqual(working.data);
  expect(event.data).toHaveProperty('surplus', 1);
});
