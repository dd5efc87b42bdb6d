import { expect, test } from 'vitest';
import { linesOf } from '../../tools/call-faces.ts';
import { textOf as read } from '../../tools/page-text.ts';
import { tellsToTurn } from '../../tools/tells-to-turn.ts';
import { BUILD, settingCall } from './setting-call.ts';

const { freshCall, get, html, keep, send } = settingCall();

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
    const exported = await get('/export');
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
      await send('/lash', {
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
