import { adhesionUtilisation } from '../../../calc/brakes/adhesion.js';
import { dualBrakes, tandemBrakes } from '../../../calc/brakes/chain.js';
import { circuitFailure } from '../../../calc/brakes/circuit-failure.js';
import { brakeDisplacement } from '../../../calc/brakes/displacement.js';
import { brakeDistribution } from '../../../calc/brakes/distribution.js';
import type { Value } from '../../../calc/value.js';
import { isMissing, type Maybe, type Work } from '../../engine/work.js';
import type { Brakes, System } from '../brakes-fields.js';
import { given, sum, times } from './maybe.js';

type Axle = 'front' | 'rear';
type State = 'was' | 'planned' | 'now';
type Field = Exclude<keyof NonNullable<System['front']>, 'type' | 'part' | 'mount'>;

/** Rolling circumference over overall diameter of a radial tyre (ETRTO), over one turn. */
const rollingRadius = 3.05 / (2 * Math.PI);

interface Chain {
  frontForce: Maybe;
  rearForce: Maybe;
  share: Maybe;
  deceleration: Maybe;
}

/** Pressure, torque, shares of the axles and what is left with one circuit, for the car as weighed and laden. */
export function examineBalance(data: Brakes, work: Work): void {
  const state: State = data.now || !data.planned ? 'now' : 'planned';
  const light = {
    frontMass: work.fact('mass_front'),
    rearMass: work.fact('mass_rear'),
    massHeight: work.fact('cg_height'),
  };
  const laden = {
    frontMass: work.take(data.laden?.front, 'laden', 'front'),
    rearMass: work.take(data.laden?.rear, 'laden', 'rear'),
    massHeight: work.take(data.laden?.['cg-height'], 'laden', 'cg-height'),
  };
  if (data.was?.front && data.was.rear) chain('was', sum(light.frontMass, light.rearMass), data, work);
  for (const [load, masses] of [
    ['unladen', light],
    ['laden', laden],
  ] as const) {
    const vehicle = { ...masses, wheelbase: work.fact('wheelbase') };
    const { frontForce, rearForce, share, deceleration } = chain(
      state,
      sum(masses.frontMass, masses.rearMass),
      data,
      work,
      load,
    );
    const balance = work.sheet(brakeDistribution, load, {
      ...vehicle,
      frontShare: share,
      rate: times(deceleration, 1 / 9.80665, 'over 9.80665 m/s²'),
    });
    work.sheet(adhesionUtilisation, load, { ...vehicle, frontShare: share, regulation: 'un-r13' });
    work.compare('brakes.front-first', load, balance.get('crossing'));
    const split = data[state]?.split;
    const left = split === 'diagonal' ? (['diagonal'] as const) : split === 'axles' ? (['front', 'rear'] as const) : [];
    for (const remaining of left)
      work.sheet(circuitFailure, `${load}-${remaining}`, { ...vehicle, frontForce, rearForce, remaining });
    if (load === 'laden' && balance.run?.results)
      work.state('brakes.balance-sheet', '', 'met', 'shown by the sheets of pressure and balance of this note', {
        run: balance.run.id,
        answer: 'reckoned',
      });
  }
  displacement(state, data, work);
}

function chain(state: State, mass: Maybe, data: Brakes, work: Work, load?: string): Chain {
  const system = data[state];
  const take = (name: 'pedal-ratio' | 'bore' | 'front-bore' | 'rear-bore' | 'bar-share') =>
    work.take(system?.[name], state, name);
  const optional = (name: 'booster-ratio' | 'booster-assist' | 'valve-knee' | 'valve-slope') =>
    system?.[name] ? work.take(system[name], state, name) : undefined;
  const common = {
    pedalForce: work.take(data['pedal-force'], 'pedal-force'),
    pedalRatio: take('pedal-ratio'),
    efficiency: system?.efficiency
      ? work.take(system.efficiency, state, 'efficiency')
      : given(1, '1', 'no losses taken off'),
    mass,
    frontPistons: of('front', 'pistons'),
    frontPiston: of('front', 'piston'),
    frontFactor: factor('front'),
    frontRadius: of('front', 'radius'),
    frontRolling: rolling('front'),
    rearPistons: of('rear', 'pistons'),
    rearPiston: of('rear', 'piston'),
    rearFactor: factor('rear'),
    rearRadius: of('rear', 'radius'),
    rearRolling: rolling('rear'),
  };
  const subject = load ?? state;
  const worked =
    system?.layout === 'dual'
      ? work.sheet(dualBrakes, subject, {
          ...common,
          barShare: take('bar-share'),
          frontBore: take('front-bore'),
          rearBore: take('rear-bore'),
        })
      : work.sheet(tandemBrakes, subject, {
          ...common,
          bore: take('bore'),
          boosterRatio: optional('booster-ratio'),
          boosterAssist: optional('booster-assist'),
          valveKnee: optional('valve-knee'),
          valveSlope: optional('valve-slope'),
        });
  const get = worked.get as (name: keyof Chain) => Maybe;
  return {
    frontForce: get('frontForce'),
    rearForce: get('rearForce'),
    share: get('share'),
    deceleration: get('deceleration'),
  };

  function of(axle: Axle, name: Field): Maybe {
    return work.take(system?.[axle]?.[name], state, axle, name);
  }
  function factor(axle: Axle): Maybe {
    const brake = system?.[axle];
    if (brake?.type === 'drum') return of(axle, 'factor');
    return brake?.type === 'disc'
      ? times(of(axle, 'friction'), 2, 'on two sides of the disc')
      : work.lacks(state, axle, 'type');
  }
  function rolling(axle: Axle): Maybe {
    const tyre = work.fact(`tyre_diameter_${axle}`);
    return system?.[axle]?.rolling || isMissing(tyre)
      ? of(axle, 'rolling')
      : times(tyre, rollingRadius, 'rolling circumference 3.05 diameters, over one turn');
  }
}

/** Fluid that both circuits take, where the movement of the pistons was measured. */
function displacement(state: State, data: Brakes, work: Work): void {
  const system = data[state];
  const diagonal = system?.split === 'diagonal';
  const axle = (name: Axle) => {
    const brake = system?.[name];
    const take = (field: Field) => work.take(brake?.[field], state, name, field);
    const [piston, pistons] = [take('piston'), take('pistons')];
    const sides = 2 * (brake?.mount === 'fixed' || brake?.type === 'drum' ? 2 : 1);
    const area: Maybe =
      isMissing(piston) || isMissing(pistons)
        ? isMissing(piston)
          ? piston
          : pistons
        : areaOf(piston, pistons.si, sides);
    return { area, move: take('move'), swell: take('swell') };
  };
  const [front, rear] = [axle('front'), axle('rear')];
  const bore = (which: Axle) =>
    system?.layout === 'dual'
      ? work.take(system[`${which}-bore`], state, `${which}-bore`)
      : work.take(system?.bore, state, 'bore');
  if (diagonal)
    return work.compare('brakes.stroke', '', {
      missing: [],
      reason: 'both circuits of a diagonal split move pistons of both axles, for which this sheet has no place',
    });
  const worked = work.sheet(brakeDisplacement, '', {
    bore1: bore('front'),
    area1: front.area,
    move1: front.move,
    swell1: front.swell,
    bore2: bore('rear'),
    area2: rear.area,
    move2: rear.move,
    swell2: rear.swell,
    arrangement:
      system?.layout === 'dual' ? 'parallel' : system?.layout === 'tandem' ? 'tandem' : work.lacks(state, 'layout'),
    available: work.take(system?.stroke, state, 'stroke'),
    pedalRatio: work.take(system?.['pedal-ratio'], state, 'pedal-ratio'),
  });
  work.compare('brakes.stroke', '', worked.get('used'));
}

/** Area of all pistons of an axle that the circuit moves. Its uncertainty is that of the diameter, twice over. */
function areaOf(diameter: Value, pistons: number, sides: number): Value {
  const area = (Math.PI / 4) * diameter.si ** 2 * pistons * sides;
  const parts = new Map([...diameter.parts].map(([source, part]) => [source, (part * 2 * area) / diameter.si]));
  return {
    ...diameter,
    si: area,
    unit: 'mm²',
    parts,
    origin: { kind: 'given', text: `${sides * pistons} areas of the piston's diameter` },
  };
}
