import type { Sheet } from '../sheet.js';
import { axleToe } from './axle-toe.js';
import { coilRate } from './coil-rate.js';
import { coilTravel } from './coil-travel.js';
import { toeChange } from './toe-change.js';

export const sheets = [coilRate, coilTravel, toeChange, axleToe] as unknown as readonly Sheet[];
