import { corpusOf } from '../corpus-of.ts';

corpusOf('workings');
