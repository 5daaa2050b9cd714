import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';

/** Builds made up for measuring: notes of four kinds with words, and photos with grain so that they are as heavy as real ones. */

const buildFile = (name: string) => `---
title: Bench build ${name}
invented: yes
vehicle: { make: Examplia, model: One, built: 1990-06, category: MA, registration: VIC }
original: { mass: 1200 kg, mass-source: made up, induction: na, capacity: 1800 cm3, largest-capacity: 2200 cm3 }
instruments:
  - { id: caliper-1, what: caliper, uncertainty: 0.03 mm, checked: 2026-01-08 }
  - { id: inclinometer-1, what: inclinometer, uncertainty: 0.1 deg, checked: 2026-01-08 }
load-cases:
  - { id: drop, says: shock on the member, force: 1.4 kN, factor: 3, agreed-with: R. A., agreed-on: 2026-02-10 }
---
`;

const words =
  'The bracket was cut from plate, fitted to the rail after the paint was cleaned off, and tacked square to the datum before it was welded. '.repeat(
    40,
  );

const kinds: ((n: number) => string)[] = [
  () => `kind: engine
title: Engine fitted
induction: na
bore: { value: 86.02 mm, with: caliper-1 }
stroke: 86.0 mm
cylinders: 6
torque: 262 N·m
highest-speed: 6200 rpm
mount-spacing: 560 mm
mount-capacity: 4.2 kN
canister: yes
answers: { engine.code: LA1, fasteners.appendix: yes }`,
  (n) => `kind: body-structure
title: Member ${n} replaced
stages: { as-received: 2026-02-02, cut: 2026-03-10, tacked: 2026-03-12, welded: 2026-03-14, painted: 2026-03-20 }
pieces:
  - id: member
    role: replacement
    was: { section: HAT 60x40x20x2.0, steel: S235, wall: { value: 1.95 mm, with: caliper-1 } }
    now: { section: RHS 50x30x2.5 (EN 10219), steel: S355, wall: { value: 2.48 mm, with: caliper-1 } }
    joined-to: { value: 1.2${n % 10} mm, with: caliper-1 }
    welds:
      - { id: left, type: fillet, leg: 3.2 ± 0.2 mm, length: 110 mm, thickness: 3.1 mm, category: GP, metal: 490 MPa, load-case: drop }`,
  (n) => `kind: driveline
title: Shaft ${n}
shafts: one
length: 1242 mm
tube-diameter: { value: 76.2 mm, with: caliper-1 }
tube-wall: 1.65 mm
stations:
  - id: ride
    gearbox: { value: 3.0 deg down to the rear, with: inclinometer-1 }
    shaft: { value: 5.1 deg down to the rear, with: inclinometer-1 }
    pinion: { value: 2.9 deg nose up, with: inclinometer-1 }`,
  (n) => `kind: suspension-link
title: Link ${n}
worked: none
single-shear: no
links:
  - id: left
    length: 612 mm
    diameter: 30 mm
    wall: 4.0 mm
    steel: S355
    thread-a: 3/4-16 UNF
    thread-b: 3/4-16 UNF LH
    thread-class: '8.8'
    engaged-a: 30 mm
    engaged-b: 31 mm
    home-a: 42 mm
    home-b: 42 mm
    least-engagement: 25 mm
    least-engagement-from: data sheet
    load-case: drop`,
];

export function makeBuild(folder: string, notes: number, photos: readonly string[] = []): void {
  mkdirSync(join(folder, 'notes'), { recursive: true });
  mkdirSync(join(folder, 'photos'), { recursive: true });
  writeFileSync(join(folder, 'build.md'), buildFile(folder.split('/').at(-1)!));
  const share = Math.ceil(photos.length / Math.max(1, notes));
  for (let n = 0; n < notes; n++) {
    const own = photos.slice(n * share, (n + 1) * share);
    const shown =
      own.length > 0
        ? `\nphotos:\n${own.map((p) => `  - { file: ${p}, shows: What photo ${p} shows, stage: tacked, taken-on: 2026-03-12 }`).join('\n')}`
        : '';
    const front = kinds[n === 0 ? 0 : 1 + (n % 3)]!(n) + shown;
    writeFileSync(
      join(folder, 'notes', `${String((n + 1) * 10).padStart(4, '0')}-note.md`),
      `---\n${front}\n---\n\n## What was done\n\n${words}\n\nSee [the first note](0010-note.md).\n`,
    );
  }
}

export async function makePhotos(folder: string, count: number): Promise<string[]> {
  mkdirSync(join(folder, 'photos'), { recursive: true });
  const names: string[] = [];
  for (let n = 0; n < count; n++) {
    const name = `photo-${String(n).padStart(4, '0')}.jpg`;
    const grain = {
      create: {
        width: 2400,
        height: 1800,
        channels: 3 as const,
        background: { r: (n * 37) % 200, g: 120, b: 90 },
        noise: { type: 'gaussian' as const, mean: 128, sigma: 30 },
      },
    };
    await sharp(grain)
      .jpeg({ quality: 90 })
      .toFile(join(folder, 'photos', name));
    names.push(name);
  }
  return names;
}

/** Photos of contents of their own, quickly: a few pictures, each with other bytes behind its end. */
export async function makeManyPhotos(folder: string, count: number): Promise<string[]> {
  mkdirSync(join(folder, 'photos'), { recursive: true });
  const grain = (mean: number) => ({
    create: {
      width: 1600,
      height: 1200,
      channels: 3 as const,
      background: '#706050',
      noise: { type: 'gaussian' as const, mean, sigma: 25 },
    },
  });
  const pictures = await Promise.all(
    [90, 120, 150, 180].map((mean) => sharp(grain(mean)).jpeg({ quality: 85 }).toBuffer()),
  );
  return Array.from({ length: count }, (_, n) => {
    const name = `photo-${String(n).padStart(4, '0')}.jpg`;
    writeFileSync(
      join(folder, 'photos', name),
      Buffer.concat([pictures[n % pictures.length]!, Buffer.from(`photo ${n} of ${folder}`)]),
    );
    return name;
  });
}
