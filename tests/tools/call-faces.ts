import { contextOf } from '../../server/call/context.ts';
import type { CallFrame } from '../../server/call-pages/frame.ts';
import { wholeCallOf } from '../../server/call-pages/report/load-whole-call.ts';
import { reportPage } from '../../server/call-pages/report/report.ts';
import { stepPage } from '../../server/call-pages/step-page.ts';
import { takeoverPage } from '../../server/call-pages/takeover/takeover.ts';
import { worksheetPage } from '../../server/call-pages/worksheet.ts';
import type { BuildRecord } from '../../server/records/whole-build/build-record.ts';
import { CALL_STEPS } from '../../server/steps/index.ts';
import type { PageAsked, PageSide } from '../../server/web/page-request.ts';
import type { Page } from '../../server/web/pages/render.ts';
import { madeOnce } from './made-once.ts';
import { asWritten } from './page-text.ts';

/*
 * Every page of a call out of a record, rendered without a request or a database, so that many builds can be looked
 * at on all of them.
 */

const { computations, views } = await madeOnce();
const frame: CallFrame = CALL_STEPS;
const NOW = new Date('2026-03-02T12:00:00Z');
const DESK = { phone: 'extension 40 (demo)', origin: 'https://bench.invalid' };

export interface Face {
  /** `desk/ratio`, `bench/ratio`, `report`. */
  readonly name: string;
  readonly html: string;
}

const render = (page: Page): string =>
  views.render(`/pages/${page.template}/page`, { ...page.data, frame: { title: page.title } });

/** A page asked by either side. */
export function askedBy(side: PageSide, callId: string): PageAsked {
  const about = { shopId: 'shop', id: 'person', name: 'Robin at the desk' };
  return {
    principal:
      side === 'desk'
        ? { ...about, kind: 'staff', roles: ['desk'], sessionId: 'session', shortcuts: true }
        : { ...about, kind: 'builder', buildId: 'build', callId },
    side,
    params: { callId },
    query: {},
    fields: {},
  };
}

/** The steps on both sides, the report, the takeover card and the worksheet. */
export function facesOf(record: BuildRecord, callId: string): Face[] {
  return (['desk', 'bench'] as const).flatMap((side) => {
    const req = askedBy(side, callId);
    const context = contextOf(req, callId, record);
    const whole = wholeCallOf(frame, context, computations);
    const steps = frame.steps.map(({ name }) => ({
      name: `${side}/${name}`,
      page: () => {
        const body = whole.open.get(name)?.page({ context, req, rejected: undefined });
        if (body === undefined) throw new Error(`there is no step ${name}`);
        return stepPage(frame, context, { step: name }, body, undefined);
      },
    }));
    const sheets = [
      { name: 'report', page: () => reportPage(whole, computations, { now: NOW, desk: DESK }) },
      { name: 'takeover', page: () => takeoverPage(whole) },
      { name: 'worksheet', page: () => worksheetPage(frame, context, DESK) },
    ];
    return [...steps, ...(side === 'desk' ? sheets : [])].map(({ name, page }) => ({
      name,
      html: render(page()),
    }));
  });
}

/** The parts of a step that its page leads to, each with its form: `desk/timing peak`. */
export function partFacesOf(record: BuildRecord, callId: string): Face[] {
  const asked = askedBy('desk', callId);
  const context = contextOf(asked, callId, record);
  const whole = wholeCallOf(frame, context, computations);
  return frame.steps.flatMap(({ name: step }) => {
    const pageOf = (query: Readonly<Record<string, string>>): string => {
      const body = whole.open.get(step)?.page({ context, req: { ...asked, query }, rejected: undefined });
      return body === undefined ? '' : render(stepPage(frame, context, { step }, body, undefined));
    };
    const parts = new Set([...pageOf({}).matchAll(/[?&;]of=([a-z-]+)/g)].map(([, of = '']) => of));
    return [...parts].map((of) => ({ name: `desk/${step} ${of}`, html: pageOf({ of }) }));
  });
}

/** Each entry of the call that can be put right, on its own page. */
export function correctionFacesOf(record: BuildRecord, callId: string): Face[] {
  const context = contextOf(askedBy('desk', callId), callId, record);
  return frame.steps.flatMap((step) =>
    step.corrections.flatMap((correction) =>
      correction.entries(context).map(({ id }) => {
        const { title, body } = correction.page({ context, computations }, id, undefined);
        return {
          name: `desk${correction.path}`,
          html: render(stepPage(frame, context, { step: step.name, title }, body, undefined)),
        };
      }),
    ),
  );
}

const ENTITIES: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" };
const BREAKS =
  /<\/?(?:p|h\d|li|tr|td|th|div|dt|dd|section|button|label|legend|summary|option|text|title|desc|caption|br|a)\b[^>]*>/g;

/** What a person reads, line by line; what stands in one sentence stands in one line. */
export function linesOf(html: string): string[] {
  return asWritten(html)
    .replace(/<(script|style)\b[\s\S]*?<\/\1>/g, ' ')
    .replace(BREAKS, '\n')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&(lt|gt|amp|quot|#39);/g, (all, name: string) => ENTITIES[name] ?? all)
    .split('\n')
    .map((line) => line.replace(/[\s\u00a0]+/g, ' ').trim())
    .filter((line) => line !== '');
}
