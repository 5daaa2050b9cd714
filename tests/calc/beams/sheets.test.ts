import { describe } from 'vitest';
import { sheets } from '../../../src/calc/beams/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of beams and twist', () => sheetRules(sheets));
describe('formula lines of beams and twist', () => formulaRules(sheets));
describe('units of beams and twist', () => unitRules(sheets));
