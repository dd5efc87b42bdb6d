import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { linesOf } from '../tools/call-faces.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { textOf as read } from '../tools/page-text.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';

/** Pushrod from a checker, stand to shims, preload and lash by shim: each a part of its step, kept with the build. */
let service: TestService;
let person: Person;
let callId: string;
let buildId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const BUILD = {
  engine: { rockerMounting: 'stud', lifter: 'solid-roller' },
  cam: {
    intake: { lobeLift: '.375 in', lash: '.018 in' },
    exhaust: { lobeLift: '.360 in', lash: '.020 in' },
  },
  rockers: { nominalRatio: 1.6, pivotToTip: '1.6 in' },
};

async function freshCall(spec: object = BUILD, goal = 'adjuster'): Promise<void> {
  const opened = { goal, buildLabel: 'Test build', callerName: 'A caller' };
  const { json } = await sendJson(service, person.bearer, 'POST', '/api/v1/calls', opened);
  [callId, buildId] = [String(json.id), String(json.buildId)];
  const url = `/api/v1/builds/${buildId}/spec`;
  const body = { spec, reason: 'test' };
  const put = await sendJson(service, person.bearer, 'PUT', url, body, { 'if-match': '"1"' });
  if (put.status !== 200) throw new Error(`${put.status} ${put.text}`);
}

const keep = (step: string, part: string, fields: Record<string, string>) =>
  postForm(
    service,
    `/calls/${callId}/workings/${step}`,
    { key: crypto.randomUUID(), form: 'working', part, computation: part, ...fields },
    { cookies: person.cookies },
  );

async function html(at: string): Promise<string> {
  const answer = await service.request({ url: `/calls/${callId}/${at}`, cookies: person.cookies });
  expect([at, answer.statusCode]).toEqual([at, 200]);
  expect(htmlFaults(answer.body)).toEqual([]);
  return answer.body;
}
const inField = (page: string, name: string) =>
  new RegExp(`name="${name}"[^>]*value="([^"]*)"`).exec(page)?.[1];

/** The newest working as JSON has it. */
async function newest(computation: string): Promise<string> {
  const { text } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/workings`);
  expect(text).toContain(computation);
  return text;
}

describe('a pushrod from a checker', () => {
  const checker = { checkerAtZero: '7.8', perTurn: '.050', turns: '1', convention: '', stock: '' };

  test('its form has ratio and lash of the build; the lash at the valve comes off by the ratio', async () => {
    await freshCall();
    const page = await html('steps/geometry?of=pushrod-length');
    expect(['lash', 'ratio', 'perTurn'].map((name) => inField(page, name))).toEqual([
      '.018 in',
      '1.6',
      '.050 in',
    ]);
    expect(page).not.toContain('name="add"');
    // 7.800 and one turn of .050 is 7.850 (a cam maker's answers); .018 at the valve is .01125 at 1.6, by hand.
    const kept = await keep('geometry', 'pushrod-length', {
      ...checker,
      lash: '.018',
      ratio: '1.6',
      stock: '7.8, 7.85',
    });
    expect(kept.statusCode).toBe(303);
    const text = read(await html('steps/geometry?of=pushrod-length'));
    expect(text).toContain('7.8387 in');
    expect(text).toContain('without an adjuster no gap is left');
    expect(inField(await html('steps/geometry?of=pushrod-length'), 'checkerAtZero')).toBe('7.8 in');
  });

  test('a hydraulic lifter has its preload added, and no ratio goes along without a lash', async () => {
    await freshCall({ ...BUILD, engine: { lifter: 'hydraulic-roller' } });
    const page = await html('steps/geometry?of=pushrod-length');
    expect(page).toContain('name="add"');
    expect(page).not.toContain('name="lash"');
    await keep('geometry', 'pushrod-length', { ...checker, perTurn: '1/4-20', add: '.030' });
    expect(await newest('pushrod-length')).toMatch(/"length":\{[^}]*"value":7\.88\d*/);
  });

  test('told by a gauge it is .017 less, and a thread that is none is named at its field', async () => {
    await freshCall();
    await keep('geometry', 'pushrod-length', { ...checker, convention: 'effective' });
    expect(read(await html('steps/geometry?of=pushrod-length'))).toContain('7.833 in');
    const bad = await keep('geometry', 'pushrod-length', { ...checker, perTurn: '1/4-21' });
    expect([bad.statusCode, bad.body.includes('href="#working-f-perTurn"')]).toEqual([422, true]);
    expect(inField(bad.body, 'checkerAtZero')).toBe('7.8');
  });
});

describe('the height of a stand', () => {
  test('two heights, the arm and lift of the build, and the nearest shim', async () => {
    await freshCall({ ...BUILD, engine: { rockerMounting: 'shaft', lifter: 'solid-flat' } });
    const page = await html('steps/geometry?of=stand-height');
    // .375 × 1.6 less .018, by hand.
    expect([inField(page, 'netLift'), inField(page, 'pivotToTip')]).toEqual(['.582 in', '1.6 in']);
    // Now: 2.000 + .300 − 1.950 = .350 below; wanted .582/2 = .291; raise .059.
    await keep('geometry', 'stand-height', {
      pivotHeight: '1.95',
      tipHeight: '2.0',
      rollerRadius: '.3',
      pivotToTip: '1.6',
      netLift: '.582',
      shims: '.030, .060',
    });
    const text = read(await html('steps/geometry?of=stand-height'));
    expect(text).toContain('.059 in');
    expect(text).toContain('raise the stand .059 in');
  });

  test('what was read of the part fills the arm and half of the roller', async () => {
    await freshCall({ engine: { rockerMounting: 'shaft' } });
    for (const [kind, typed] of [
      ['pivot-to-tip', '1.48 in'],
      ['roller-diameter', '.596 in'],
    ])
      await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/identification/readings`, {
        kind,
        size: typed,
      });
    const page = await html('steps/geometry?of=stand-height');
    expect([inField(page, 'pivotToTip'), inField(page, 'rollerRadius')]).toEqual(['1.48 in', '.298 in']);
  });
});

describe('preload', () => {
  const half = {
    turns: '.5',
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: '1.6',
    band: 'usual',
    liftersTravel: '',
  };

  test('turns past zero, against the band of its kind; the thread is there the next time', async () => {
    await freshCall({ ...BUILD, engine: { rockerMounting: 'stud', lifter: 'hydraulic-roller' } });
    await keep('adjuster', 'lifter-preload', half);
    // .5 × .050 × (1 + 1/1.6) = .040625, by hand.
    const kept = await html('steps/adjuster?of=lifter-preload');
    expect(read(kept)).toContain('.0406 in');
    expect(read(kept)).toContain('within');
    expect(read(kept)).toContain('Pump-up');
    expect(inField(kept, 'thread')).toBe('7/16-20');
    expect(inField(await html('steps/adjuster'), 'thread')).toBe('7/16-20');
    await keep('adjuster', 'lifter-preload', { ...half, band: 'short-travel' });
    expect(await newest('lifter-preload')).toMatch(/"plunger":"short-travel"[\s\S]*"inBand":"over"/);
  });

  test('“the maker’s own” without a band is asked for it', async () => {
    await freshCall();
    const bad = await keep('adjuster', 'lifter-preload', { ...half, band: 'maker' });
    expect([bad.statusCode, read(bad.body).includes('Least preload is missing: the maker’s band')]).toEqual([
      422,
      true,
    ]);
    const kept = await keep('adjuster', 'lifter-preload', {
      ...half,
      band: 'usual',
      'wanted.from': '.03',
      'wanted.to': '.05',
    });
    expect(kept.statusCode).toBe(303);
  });
});

describe('lash by shim', () => {
  test('the lash found last and the card’s of its valve stand in the form', async () => {
    await freshCall({ ...BUILD, cam: { intake: { lash: '.20 mm' }, exhaust: { lash: '.30 mm' } } });
    await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, {
      cylinder: 2,
      valve: 'exhaust',
      lash: '.40 mm',
      moment: 'found',
      engine: 'cold',
    });
    const page = await html('steps/adjuster?of=lash-shim');
    expect(inField(page, 'lashWanted')).toBe('.3 mm');
    expect(read(page)).toContain('Newest in the log: 2 exhaust');
    // 2.60 + .40 − .30 = 2.70, by hand.
    await keep('adjuster', 'lash-shim', {
      shimFitted: '2.60 mm',
      lashFound: '.40 mm',
      lashWanted: '.30 mm',
      stock: '2.65 mm, 2.72 mm',
    });
    expect(await newest('lash-shim')).toMatch(/"shim":\{[^}]*"value":0?\.1062992/);
  });
});

describe('hot and cold', () => {
  test('by what the parts are made of, as the engine was described; what was found cold is told hot', async () => {
    await freshCall({
      ...BUILD,
      rockers: { nominalRatio: 1.5 },
      engine: { description: 'small V8, iron block, aluminum heads' },
    });
    const found = { cylinder: 1, valve: 'intake', lash: '.012 in', moment: 'found', engine: 'cold' };
    await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, found);
    const page = await html('steps/adjuster?of=lash-hot-cold');
    expect(page).toMatch(
      /value="cast-iron" selected[\s\S]*value="aluminium" selected[\s\S]*value="steel" selected/,
    );
    expect([inField(page, 'hotLash'), inField(page, 'coldFound')]).toEqual(['.018 in', '.012 in']);
    expect(read(page)).not.toMatch(/expansion/i);
    const kept = await keep('adjuster', 'lash-hot-cold', {
      hotLash: '.018',
      coldFound: '.012',
      temperatureRise: '70 degC',
      ratio: '1.5',
      'materials.block': 'cast-iron',
      'materials.head': 'aluminium',
      'materials.pushrod': 'steel',
      'materials.valve': 'steel',
    });
    expect(kept.statusCode).toBe(303);
    // 70 K × [1.5·11.4·4.5 + 21.5·(2.5·5.2 − .4) − 1.5·12.3·9.7 − 12.3·5.0] millionths = .0075 by hand.
    const text = read(await html('steps/adjuster?of=lash-hot-cold'));
    expect(text).toMatch(/Cold lash [^.]*\.0105 in/);
    expect(text).toContain('.0195 in');
    expect(text).toContain('a guess for this one');
    expect(text).toContain('Printed for an iron block and an aluminium head');
  });
});

describe('which valve when', () => {
  const V8 = { cylinders: 8, firingOrder: '1-8-4-3-6-5-7-2', bankOrder: '1 3 5 7 / 2 4 6 8' };
  const url = () => `/api/v1/builds/${buildId}/lash`;

  test('the table of the firing order and its numbering stands on the step, the report and in JSON', async () => {
    await freshCall({ engine: V8 });
    for (const at of ['steps/adjuster?of=order', 'report']) {
      const text = read(await html(at));
      // As workshop manuals print it, from memory.
      expect(text, at).toMatch(/cylinder 1, both its valves shut\s+1, 2, 5, 7\s+1, 3, 4, 8/);
      expect(text, at).toMatch(/cylinder 6, both its valves shut\s+3, 4, 6, 8\s+2, 5, 6, 7/);
      expect(text, at).toMatch(/\b8\s+bank 2, 4th from the front/);
      expect(text, at).toContain('when a cylinder’s exhaust begins to open, set its intake');
    }
    const { json } = await sendJson(service, person.bearer, 'GET', url());
    expect(json.settingOrder).toMatchObject({
      twoPositions: [
        { firing: 1, intakes: [1, 2, 5, 7], exhausts: [1, 3, 4, 8] },
        { firing: 6, intakes: [3, 4, 6, 8], exhausts: [2, 5, 6, 7] },
      ],
    });
  });

  test('without a firing order, or with one that names a cylinder twice, the rule stands and what is missing', async () => {
    await freshCall({ engine: { cylinders: 8 } });
    expect(read(await html('steps/adjuster?of=order'))).toContain(
      'For the table of this engine: the firing order.',
    );
    await freshCall({ engine: { ...V8, firingOrder: '1-8-4-3-6-5-7-7' } });
    expect(read(await html('steps/adjuster?of=order'))).toContain(
      'does not name each of the 8 cylinders once',
    );
    await freshCall({ engine: { cylinders: 5, firingOrder: '1-2-4-5-3' } });
    const five = read(await html('steps/adjuster?of=order'));
    expect(five).toContain('Two positions a turn apart need an even count of cylinders.');
    expect(five).not.toContain('In two positions, a turn');
  });

  test('under a stop nobody is told which valve to set', async () => {
    await freshCall({ engine: V8 });
    await postForm(
      service,
      `/calls/${callId}/hold`,
      { key: crypto.randomUUID(), form: 'stop', act: 'hold', holdReason: 'a tight spot' },
      { cookies: person.cookies },
    );
    for (const at of ['steps/adjuster?of=order', 'report']) {
      const page = await html(at);
      expect(read(page), at).not.toMatch(/both its valves shut|begins to open/);
      expect(linesOf(page).flatMap(tellsToTurn), at).toEqual([]);
    }
    const { json } = await sendJson(service, person.bearer, 'GET', url());
    expect(json.settingOrder).toMatchObject({
      rows: [],
      said: [expect.stringMatching(/^Not while the stop stands/)],
    });
  });
});

const OF_ADJUSTER = {
  adjuster: {
    lashFound: '.026',
    lashWanted: '.018',
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: '1.6',
    lifter: 'solid',
  },
  'lifter-preload': { turns: '.5', thread: '7/16-20', mount: 'stud-nut', ratio: '1.5', band: 'usual' },
  'lash-shim': { shimFitted: '2.60 mm', lashFound: '.40 mm', lashWanted: '.30 mm' },
};
const OF_GEOMETRY = {
  'pushrod-length': { checkerAtZero: '7.8', perTurn: '.050', turns: '2' },
  'stand-height': {
    pivotHeight: '1.95',
    tipHeight: '2',
    rollerRadius: '.3',
    pivotToTip: '1.6',
    netLift: '.6',
  },
};
const TITLES: Readonly<Record<string, string>> = {
  adjuster: 'Preload and lash by turns',
  'lifter-preload': 'Preload of a hydraulic lifter',
  'lash-shim': 'Lash by shim',
  'pushrod-length': 'Pushrod length',
  'stand-height': 'Height of a rocker stand',
};

test.each([
  ['adjuster', OF_ADJUSTER],
  ['geometry', OF_GEOMETRY],
])(
  '%s: report, card and export have what was kept; under a stop none of it tells to turn or set',
  async (step, all) => {
    // Sums for either kind of lifter on one build: which are in it was not said.
    await freshCall({ ...BUILD, engine: { rockerMounting: 'stud' } }, step);
    for (const [part, fields] of Object.entries(all))
      expect([part, (await keep(step, part, fields)).statusCode]).toEqual([part, 303]);
    const [report, card] = [read(await html('report')), read(await html('takeover'))];
    const exported = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/export`);
    for (const part of Object.keys(all)) {
      const title = TITLES[part] ?? '';
      expect([title, report.includes(title), card.includes(title)]).toEqual([title, true, true]);
      expect(exported.text).toContain(`"computation":"${part}"`);
    }
    if (step === 'adjuster') expect(card).toMatch(/: Tighten \.\d+ turn/);

    for (const [moment, lash] of [
      ['set', '.018 in'],
      ['found', '.025 in'],
      ['set', '.018 in'],
      ['found', '.025 in'],
    ])
      await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, {
        cylinder: 1,
        valve: 'intake',
        lash,
        moment,
        nut: 'held',
      });
    for (const at of [...Object.keys(all).map((part) => `steps/${step}?of=${part}`), 'report', 'takeover']) {
      const page = await html(at);
      expect(read(page), at).toContain('grew again after it was set again');
      expect(read(page), at).not.toMatch(/\b(tighten|loosen)\b|raise the stand|Direction/);
      expect(linesOf(page).flatMap(tellsToTurn), at).toEqual([]);
    }
  },
);
