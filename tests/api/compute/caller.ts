import { expect } from 'vitest';
import { problemIn, type Told } from '../../tools/problem.ts';
import type { TestService } from '../../tools/service.ts';

export type Fault = NonNullable<Told['errors']>[number];

/** A caller that sends what it likes and holds every answer to being one: no 5xx, no null. */
export function principalOf(service: () => TestService) {
  async function send(name: string, payload: string, type = 'application/json') {
    const response = await service().request({
      method: 'POST',
      url: `/api/v1/compute/${name}`,
      headers: { 'content-type': type },
      payload,
    });
    const shown = `${name} ${payload.slice(0, 300)} ${response.body.slice(0, 300)}`;
    expect(response.statusCode, shown).toBeLessThan(500);
    if (response.statusCode === 200) expect(response.body, shown).not.toMatch(/\bnull\b|NaN|Infinity/);
    return response;
  }

  async function faults(name: string, payload: string): Promise<readonly Fault[]> {
    const { errors = [] } = problemIn(await send(name, payload), 422, 'invalid-input');
    return errors;
  }

  const codes = async (name: string, body: unknown) => {
    const told = await faults(name, JSON.stringify(body));
    return told.map(({ pointer, code }) => `${pointer} ${code}`).sort();
  };

  return { send, faults, codes };
}
