import { toldOf } from './told-of.ts';

toldOf('part');
