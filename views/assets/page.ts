import { followTyping } from './dial.ts';
import { echoEntries } from './echo.ts';
import { keepFocus } from './focus.ts';
import { moveByArrows } from './grid.ts';
import { followPicks } from './keeps.ts';
import { listenToKeys } from './keys.ts';
import { keepLive } from './live.ts';
import { tellLocalTime } from './local-time.ts';
import { offerNumberPad } from './number-pad.ts';
import { markRests } from './rests-on.ts';
import { offerSheets } from './sheets.ts';
import { rememberOpening } from './unsent/opened.ts';
import { goOnWithoutSignal } from './unsent.ts';

/** The browser's part of every page. Pages work without it; it only saves steps. */
keepFocus();
offerSheets();
echoEntries();
followTyping();
listenToKeys();
moveByArrows();
markRests();
keepLive();
tellLocalTime();
offerNumberPad();
followPicks();
rememberOpening();
goOnWithoutSignal();
