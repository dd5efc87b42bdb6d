import { expect } from 'vitest';
import { sendJson } from '../../tools/call.ts';
import { htmlFaults } from '../../tools/html-faults.ts';
import { measuredPages } from '../measured-pages.ts';

/* Pushrod from a checker, stand to shims, preload and lash by shim: each a part of its step, kept with the build. */

/** An invented build with studs and solid rollers. */
export const BUILD = {
  engine: { rockerMounting: 'stud', lifter: 'solid-roller' },
  cam: {
    intake: { lobeLift: '.375 in', lash: '.018 in' },
    exhaust: { lobeLift: '.360 in', lash: '.020 in' },
  },
  rockers: { nominalRatio: 1.6, pivotToTip: '1.6 in' },
};

/** A desk that opens calls about setting, over one service for the file; all else speaks of the last one. */
export function settingCall() {
  const { freshCall, open, post } = measuredPages();
  const json = (method: 'GET' | 'POST', path: string, body?: object) => {
    const { service, person, buildId } = open();
    return sendJson(service, person.bearer, method, `/api/v1/builds/${buildId}${path}`, body);
  };
  return {
    freshCall: (spec: object = BUILD, goal = 'adjuster') => freshCall(spec, goal),
    /** Keeps a part of a step by its form. */
    keep: (step: string, part: string, fields: Record<string, string>) =>
      post(`/workings/${step}`, { form: 'working', part, computation: part, ...fields }),
    /** A page of the call, without a fault in its HTML. */
    async html(at: string): Promise<string> {
      const { service, person, callId } = open();
      const answer = await service.request({ url: `/calls/${callId}/${at}`, cookies: person.cookies });
      expect([at, answer.statusCode]).toEqual([at, 200]);
      expect(htmlFaults(answer.body)).toEqual([]);
      return answer.body;
    },
    get: (path: string) => json('GET', path),
    send: (path: string, body: object) => json('POST', path, body),
    /** The newest working as JSON has it. */
    async newest(computation: string): Promise<string> {
      const { text } = await json('GET', '/workings');
      expect(text).toContain(computation);
      return text;
    },
    /** Stops the call. */
    hold: (reason: string) => post('/hold', { form: 'stop', act: 'hold', holdReason: reason }),
  };
}
