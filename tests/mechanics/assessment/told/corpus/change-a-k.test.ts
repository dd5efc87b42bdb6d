import { corpusOf } from '../corpus-of.ts';

corpusOf('change-a-k');
