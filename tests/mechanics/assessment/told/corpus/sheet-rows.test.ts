import { corpusOf } from '../corpus-of.ts';

corpusOf('sheet-rows');
