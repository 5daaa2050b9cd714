import { describe } from 'vitest';
import { sheets } from '../../../src/calc/beams/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';

describe('sheets of beams', () => sheetRules(sheets));
describe('formula lines of beams', () => formulaRules(sheets));
