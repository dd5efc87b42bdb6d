import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { bodyOf } from '../../server/compute-forms/form/body-of.ts';
import type { controlsOf } from '../../server/compute-forms/form/controls-of.ts';
import { memberOf } from '../../shared/member.ts';
import { HOSTILE } from '../../views/parts/part.ts';
import { answerOn, faultsOf, known, names, plain, referencePages } from '../tools/reference-pages.ts';

const { ask, get, post } = referencePages();

const answered = z.looseObject({ result: z.record(z.string(), z.unknown()) });

const NUMBER = /^-?\d/;

function sameWithin(computed: unknown, documented: unknown, where: string): void {
  if (typeof documented === 'number') {
    expect(typeof computed, where).toBe('number');
    const far = Math.abs(Number(computed) - documented);
    expect(far, where).toBeLessThanOrEqual(1e-9 * Math.max(1e-3, Math.abs(documented)));
    return;
  }
  if (typeof documented !== 'object' || documented === null) {
    expect(computed, where).toEqual(documented);
    return;
  }
  const keys = Object.keys(documented);
  if (typeof computed !== 'object' || computed === null) throw new Error(`${where}: nothing was computed`);
  expect(
    Object.keys(computed)
      .filter((key) => !NUMBER.test(key))
      .sort(),
    where,
  ).toEqual(keys.filter((key) => !NUMBER.test(key)).sort());
  for (const key of keys) sameWithin(memberOf(computed, key), memberOf(documented, key), `${where}/${key}`);
}

describe('every computation', () => {
  it.each(names)('%s: its page shows the worked example, and the result that is documented', async (name) => {
    const { each } = known(name);
    const { status, html } = await get(`/reference/${name}`);
    expect(status).toBe(200);
    expect(faultsOf(html)).toEqual([]);
    expect(html).toContain('<math');
    expect(/undefined|NaN|\[object| style=/.exec(html.replace(/ nonce="[^"]*"/, ''))).toBeNull();
    sameWithin(answerOn(html), each.example.result, name);
  });

  it.each(names)('%s: the form as it stands makes the body of the example', (name) => {
    const { each, controls, typed } = known(name);
    const { body, faults } = bodyOf(controls, typed);
    expect(faults).toEqual([]);
    expect(each.run(body, 'inch').result).toEqual(each.run(each.example.inputs, 'inch').result);
  });

  it.each(names)('%s: posted as typed it answers what JSON answers, in either units', async (name) => {
    const { each, typed } = known(name);
    for (const units of ['inch', 'metric'] as const) {
      const page = await post(name, { ...typed, units });
      expect(page.status).toBe(200);
      const json = await ask({
        method: 'POST',
        url: `/api/v1/compute/${name}?units=${units}`,
        payload: each.example.inputs,
      });
      const { result } = answered.parse(json.json());
      expect(answerOn(page.html)).toEqual(result);
    }
  });

  it.each(names)(
    '%s: an empty form is refused with each missing field named, nothing computed',
    async (name) => {
      const { status, html } = await post(name, {});
      expect(status).toBe(422);
      expect(html).toContain('put this right first');
      expect(html).toContain('<title>Error: ');
      expect(answerOn(html)).toBeUndefined();
      expect(faultsOf(html)).toEqual([]);
    },
  );

  it.each(names)('%s: hostile text in every field comes back whole and is never markup', async (name) => {
    const { typed } = known(name);
    const hostile = Object.fromEntries(Object.keys(typed).map((field) => [field, `${HOSTILE} ${field}`]));
    const { status, html } = await post(name, hostile);
    // A text that is read rather than measured may be refused or answered; nothing else may be taken.
    expect([200, 422]).toContain(status);
    expect(html).not.toMatch(/<script>alert|<img src=x/);
    expect(faultsOf(html)).toEqual([]);
    const { controls } = known(name);
    const choices = new Set(Object.keys(typed).filter((field) => isChoice(controls, field)));
    for (const [field, text] of Object.entries(hostile)) {
      if (!choices.has(field)) expect(plain(html), field).toContain(text);
    }
  });

  it.each(names)('%s: absurd numbers are refused or answered, never a failure', async (name) => {
    const { typed } = known(name);
    for (const absurd of ['1e308 in', '-1e308', '0', 'Infinity', '1e-320 mm', '9'.repeat(400)]) {
      const { status, html } = await post(
        name,
        Object.fromEntries(Object.keys(typed).map((field) => [field, absurd])),
      );
      expect([200, 422], absurd).toContain(status);
      expect(html).not.toMatch(/>NaN<|>Infinity<|undefined/);
    }
  });
});

function isChoice(controls: ReturnType<typeof controlsOf>, field: string): boolean {
  return controls.some((control) => {
    switch (control.kind) {
      case 'leaf':
        return control.name === field && ['word', 'truth'].includes(control.entry.as);
      case 'group':
        return isChoice(control.parts, field);
      default:
        return (
          field.startsWith(`${control.name}.`) &&
          isChoice(control.item(Number(field.split('.')[1])).parts, field)
        );
    }
  });
}
