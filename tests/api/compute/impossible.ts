import { deg, inch } from './forms.ts';

type Row = readonly [
  name: string,
  change: { readonly [pointer: string]: unknown },
  pointers: readonly string[],
];

const event = (value: number, side: string) => ({ ...deg(value), side });
const station = (lobe: number, valve: number) => ({ lobeLift: inch(lobe), valveLift: inch(valve) });
const LENGTHS = { '/stroke': inch(3), '/rodLength': inch(1.5) };

/** What no engine can be: changes to a sound body, and the fields that must be named. */
export const IMPOSSIBLE: readonly Row[] = [
  ['dial-reading', { '/needle': inch(0.1) }, ['/needle']],
  ['dial-reading', { '/start/turns': 6 }, ['/start']],
  ['dial-reading', { '/travel': inch(0.4) }, ['/travel', '/turns']],
  ['cosine-error', { '/tilt': deg(90) }, ['/tilt']],
  [
    'ratio-at-full-lift',
    { '/valveLift/readings': [inch(99)], '/lobeLift/readings': [inch(0.5)] },
    ['/lobeLift', '/valveLift'],
  ],
  ['ratio-through-lift', { '/pairs/1/lobeLift': inch(0.1) }, ['/pairs/1/lobeLift']],
  ['ratio-through-lift', { '/secondPass/pairs/2/valveLift': inch(0.1) }, ['/secondPass/pairs/2/valveLift']],
  [
    'ratio-through-lift',
    {
      '/pairs': [station(0.3, 0.5), station(0.3 + 1e-13, 0.501), station(0.3 + 2e-13, 0.502)],
      '/secondPass': undefined,
    },
    ['/pairs'],
  ],
  ['deflection', { '/lobeLift': inch(0.0055) }, ['/lightLift', '/lobeLift']],
  ['arm-lengths', { '/pivotToTip/errorLimit': inch(0.75) }, ['/pivotToTip/errorLimit']],
  [
    'arm-lengths',
    { '/pivotToCup': { value: inch(0.01), errorLimit: inch(0) } },
    ['/pivotToCup/value', '/pivotToTip/value'],
  ],
  ['follower-ratio', { '/shut/toCam/errorLimit': inch(0.48) }, ['/shut/toCam/errorLimit']],
  [
    'follower-ratio',
    { '/open/toCam': { value: inch(0.01), errorLimit: inch(0) } },
    ['/open/toCam/value', '/open/toValve/value'],
  ],
  ['fastener-for-hole', { '/hole': inch(101) }, ['/hole']],
  ['lift', { '/lash': inch(0.56) }, ['/lash']],
  ['lift', { '/ratio': 101 }, ['/ratio']],
  ['spring-load', { '/solidHeight': inch(1.91) }, ['/installedHeight', '/solidHeight']],
  ['spring-load', { '/netLift': inch(0) }, ['/netLift']],
  ['spring-load', { '/netLift': inch(-0.1) }, ['/netLift']],
  ['spring-load', { '/netLift': inch(1.9) }, ['/installedHeight', '/netLift']],
  [
    'spring-load',
    { '/netLift': inch(1.9), '/solidHeight': inch(1.95) },
    ['/installedHeight', '/installedHeight', '/netLift', '/solidHeight'],
  ],
  ['spring-from-wire', { '/meanDiameter': inch(0.192) }, ['/meanDiameter', '/wire']],
  [
    'spring-from-wire',
    { '/meanDiameter': inch(0.1), '/activeCoils': 7 },
    ['/activeCoils', '/meanDiameter', '/totalCoils', '/wire'],
  ],
  ['spring-nest', { '/springs/0/solidHeight': inch(1.9) }, ['/installedHeight', '/springs/0/solidHeight']],
  ['spring-nest', { '/springs/0/freeLength': inch(1) }, ['/springs/0/freeLength', '/springs/0/solidHeight']],
  [
    'spring-nest',
    { '/springs/1/installedHeight': inch(0.4) },
    ['/netLift', '/springs/1/installedHeight', '/springs/1/installedHeight', '/springs/1/solidHeight'],
  ],
  ['retainer-to-seal', { '/netLift': inch(0) }, ['/netLift']],
  ['pivot-load', { '/springLoad': { value: 1.1e6, unit: 'lbf' } }, ['/springLoad']],
  ['piston-drop', LENGTHS, ['/rodLength', '/stroke']],
  ['piston-drop', { '/pinOffset': inch(4) }, ['/pinOffset']],
  ['lobe-profile', { '/durations/1/duration': deg(281) }, ['/durations/1/duration']],
  ['lobe-profile', { '/durations/0/atLift': inch(0.34) }, ['/durations/0/atLift']],
  ['piston-to-valve', LENGTHS, ['/rodLength', '/stroke']],
  [
    'piston-to-valve',
    { ...LENGTHS, '/valveAngle': deg(90), '/lash': inch(0.6) },
    ['/lash', '/rodLength', '/stroke', '/valveAngle'],
  ],
  ['piston-to-valve', { '/profile/durations/0/duration': deg(721) }, ['/profile/durations/0/duration']],
  [
    'gap-scan',
    { '/readings/2/crankAngle': deg(8), '/readings/3/crankAngle': deg(8) },
    ['/readings/2/crankAngle', '/readings/3/crankAngle'],
  ],
  [
    'cam-timing',
    { '/intake/opens': event(100, 'ATDC'), '/intake/closes': event(80, 'BBDC') },
    ['/intake/closes', '/intake/opens'],
  ],
  [
    'cam-timing',
    { '/intake': { duration: deg(721), centreline: deg(361) }, '/exhaust/duration': deg(721) },
    ['/exhaust/duration', '/intake/centreline', '/intake/duration'],
  ],
  ['centreline', { '/after': deg(60) }, ['/after', '/before']],
  ['top-dead-centre', { '/stopReadings': [deg(180), deg(180)] }, ['/stopReadings/0', '/stopReadings/1']],
  ['roller-sweep', { '/netLift': inch(3.21) }, ['/netLift', '/pivotToTip']],
  ['roller-sweep', { '/netLift': inch(1.7), '/setAt': 'open' }, ['/netLift', '/pivotToTip']],
  ['linkage', { '/netLift': inch(3.05) }, ['/netLift', '/pivotToTip']],
  ['linkage', { '/pushrodAngle': deg(110) }, ['/lifterBoreAngle', '/pushrodAngle']],
  [
    'linkage',
    { '/netLift': inch(3.05), '/pushrodAngle': deg(110) },
    ['/lifterBoreAngle', '/netLift', '/pivotToTip', '/pushrodAngle'],
  ],
  ['adjuster', { '/turns': 1001 }, ['/turns']],
  ['adjuster', { '/turns': undefined, '/preload': inch(0.03), '/lifter': 'solid' }, ['/lifter', '/preload']],
  [
    'adjuster',
    { '/turns': undefined, '/preloadWanted': inch(0.03), '/lifter': 'solid' },
    ['/lifter', '/preloadWanted'],
  ],
  [
    'adjuster',
    { '/turns': undefined, '/lashFound': inch(0.02), '/lashWanted': inch(0.016) },
    ['/lashFound', '/lashWanted', '/lifter'],
  ],
  [
    'adjuster',
    {
      '/turns': undefined,
      '/lashFound': inch(0),
      '/lashWanted': inch(99),
      '/lifter': 'solid',
      '/mount': 'valve-end-screw',
    },
    ['/lashFound', '/lashWanted'],
  ],
  ['lash-shim', { '/lashWanted': inch(0.114) }, ['/lashFound', '/lashWanted', '/shimFitted']],
  ['lifter-preload', { '/turns': 1001 }, ['/turns']],
  ['lifter-preload', { '/wanted/from': inch(0.061) }, ['/wanted/from', '/wanted/to']],
  ['lifter-preload', { '/wanted/to': inch(0.151) }, ['/liftersTravel', '/wanted/to']],
  [
    'lifter-preload',
    { '/wanted/from': inch(0.2), '/wanted/to': inch(0.16) },
    ['/liftersTravel', '/wanted/from', '/wanted/to', '/wanted/to'],
  ],
  ['pushrod-length', { '/turns': -156.9 }, ['/add', '/checkerAtZero', '/less', '/turns']],
  ['pushrod-length', { '/less': inch(8) }, ['/add', '/checkerAtZero', '/less', '/turns']],
  [
    'pushrod-length',
    { '/thread': undefined, '/pitch': inch(99) },
    ['/add', '/checkerAtZero', '/less', '/turns'],
  ],
  ['stand-height', { '/netLift': inch(3.01) }, ['/netLift', '/pivotToTip']],
  ['stand-height', { '/netLift': inch(0) }, ['/netLift']],
  ['stand-height', { '/tipHeight': inch(3.2) }, ['/pivotHeight', '/pivotToTip', '/tipHeight']],
  [
    'stand-height',
    { '/rollerRadius': inch(1.5) },
    ['/pivotHeight', '/pivotToTip', '/pivotToTip', '/rollerRadius', '/tipHeight'],
  ],
  ['lash-hot-cold', { '/heights/head': inch(101) }, ['/heights/head']],
  ['cover-room', { '/limits/narrowUpTo': inch(1.6) }, ['/limits/narrowUpTo', '/limits/wideFrom']],
  ['capability', { '/lower': 20 }, ['/lower', '/upper']],
  ['separation-speed', { '/flank': deg(361) }, ['/flank']],
  ['separation-speed', { '/rate': { value: 1.1e6, unit: 'lbf/in' } }, ['/rate']],
  ['read-number', { '/text': '101 in' }, ['/text']],
];
