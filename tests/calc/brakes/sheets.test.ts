import { describe } from 'vitest';
import { sheets } from '../../../src/calc/brakes/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of brakes', () => sheetRules(sheets));
describe('formulas of brakes', () => formulaRules(sheets));
describe('units of brakes', () => unitRules(sheets));
