import { corpusOf } from '../corpus-of.ts';

corpusOf('change-n-w');
