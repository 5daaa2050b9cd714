import { describe } from 'vitest';
import { sheets } from '../../../src/calc/engine/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of engine', () => sheetRules(sheets));
describe('formulas of engine', () => formulaRules(sheets));
describe('units of engine', () => unitRules(sheets));
