import { describe } from 'vitest';
import { sheets } from '../../../src/calc/brakes/index.js';
import values from '../../reference/brakes.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of brakes', () => referenceRules(sheets, values as never));
