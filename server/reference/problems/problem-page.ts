import { PROBLEMS, type ProblemCode } from '../../problems/registry.ts';
import type { Page } from '../../web/pages/render.ts';
import { faultTable } from './fault-table.ts';
import { PROBLEM_WORDS } from './words.ts';

const isCode = (code: string): code is ProblemCode => Object.hasOwn(PROBLEMS, code);

/** A problem as it is sent, with invented figures. */
function exampleOf(code: ProblemCode): string {
  const { status, title } = PROBLEMS[code];
  const errors = [
    {
      pointer: '/seatLoad',
      code: 'wrong-dimension',
      detail: 'is a length; a load has one of lbf, N',
      received: '1.9 in',
    },
  ];
  const problem = {
    type: `/problems/${code}`,
    title,
    status,
    code,
    requestId: '00000000-0000-4000-8000-000000000000',
    ...(code === 'invalid-input' ? { detail: '1 fault in the input', errors } : {}),
  };
  return JSON.stringify(problem, null, 2);
}

/** Every problem, in the order of the registry. */
export function problemsPage(): Page {
  return {
    template: 'problem',
    title: 'Problems',
    place: '/reference',
    data: {
      title: 'Problems',
      intro:
        'What a refused request answers: problem details after RFC 9457. The last part of `type` is the code.',
      all: Object.entries(PROBLEMS).map(([code, { status, title }]) => ({ code, status, title })),
    },
  };
}

/** The page that a problem's `type` leads to; undefined for a code that is none. */
export function problemPage(code: string): Page | undefined {
  if (!isCode(code)) return undefined;
  const { status, title } = PROBLEMS[code];
  return {
    template: 'problem',
    title,
    place: '/reference',
    data: {
      title,
      facts: {
        items: [
          { label: 'Code', value: code },
          { label: 'Status', value: String(status) },
        ],
      },
      meaning: PROBLEM_WORDS[code].meaning,
      advice: PROBLEM_WORDS[code].advice,
      faults: code === 'invalid-input' ? faultTable() : undefined,
      example: exampleOf(code),
    },
  };
}
