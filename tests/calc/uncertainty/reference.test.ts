import { describe } from 'vitest';
import { sheets } from '../../../src/calc/uncertainty/index.js';
import values from '../../reference/uncertainty.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of uncertainty', () => referenceRules(sheets, values as never));
