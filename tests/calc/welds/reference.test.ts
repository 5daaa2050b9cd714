import { describe } from 'vitest';
import { sheets } from '../../../src/calc/welds/index.js';
import values from '../../reference/welds.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of welds', () => referenceRules(sheets, values as never));
