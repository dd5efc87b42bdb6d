import { toldOf } from './told-of.ts';

toldOf('others');
