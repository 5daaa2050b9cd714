import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { barePreparation, barePrint, convertedPrint } from './bare.js';
import { makeHistory, plainLog } from './history.js';
import { makeBuild, makeManyPhotos, makePhotos } from './input.js';
import { best, commandIn, type Ran, shown } from './metered.js';

/** Measures, in one run, what the documentation promises. Ratios hold better than seconds; nothing here passes or fails. */

const work = mkdtempSync(join(tmpdir(), 'gusset-bench-'));
const cache = join(work, 'cache');
const gusset = commandIn(work, cache);
const say = (text: string) => process.stdout.write(`${text}\n`);

say(
  `${cpus().length} cores, load ${loadavg()
    .map((l) => l.toFixed(1))
    .join(' ')}, node ${process.version}`,
);
try {
  const help = best([1, 2, 3].map(() => gusset('--help')));
  const bare = best([1, 2, 3].map(() => spawnNode()));
  say(`--help: ${shown(help)}; node alone ${(bare.seconds * 1000).toFixed(0)} ms`);

  makeBuild(join(work, 'b60'), 60);
  say(`check of 60 notes, whole process: ${shown(best([1, 2, 3].map(() => gusset('check', 'b60'))))}`);
  makeBuild(join(work, 'b30'), 30);
  makeBuild(join(work, 'b120'), 120);
  const [half, twice] = ['b30', 'b120'].map((b) => best([1, 2].map(() => gusset('check', b))));
  say(`check of 30 and of 120 notes: ${shown(half!)}, ${shown(twice!)}`);

  makeHistory(join(work, 'past'));
  const plain = plainLog(join(work, 'past'));
  for (const format of ['json', 'text']) {
    const told = best([1, 2, 3].map(() => gusset('history', 'past/builds/wagon', '--format', format)));
    say(
      `history of 2,000 commits over 60 notes, as ${format}: ${shown(told)}; git log -p ${plain.toFixed(2)} s; ratio ${(told.seconds / plain).toFixed(1)}`,
    );
  }

  const many = Number(process.env['BENCH_BUILDS'] ?? 40);
  const sizes = [Math.ceil(many / 4), many];
  let whole: Ran = { seconds: NaN, processor: NaN, megabytes: NaN };
  for (let n = 0; n < many; n++) makeBuild(join(work, 'shop', 'builds', `b${n}`), 40);
  for (const size of sizes) {
    const folders = Array.from({ length: size }, (_, n) => join('shop/builds', `b${n}`));
    const ran = gusset('check', ...folders);
    whole = ran;
    say(`check of ${size} builds of 40 notes: ${shown(ran)}, ${((1000 * ran.seconds) / size).toFixed(0)} ms a build`);
  }
  const folders = Array.from({ length: many }, (_, n) => join('shop/builds', `b${n}`));
  const shards = [1, 2, 3, 4].map((k) => gusset('check', ...folders, '--shard', `${k}/4`));
  say(
    `the same in four shards, one after the other: ${shards.map(shown).join('; ')}; all four / one run ${(shards.reduce((sum, r) => sum + r.processor, 0) / whole.processor).toFixed(2)} in processor time`,
  );

  const count = Number(process.env['BENCH_PHOTOS'] ?? 200);
  const photos = await makePhotos(join(work, 'p60'), count);
  makeBuild(join(work, 'p60'), 60, photos);
  const preparation = await barePreparation(
    photos.map((p) => join(work, 'p60/photos', p)),
    join(work, 'bare-cache'),
  );
  rmSync(cache, { recursive: true, force: true });
  const cold = gusset('print', 'p60', '--out', join(work, 'out'));
  const warm = best([1, 2].map(() => gusset('print', 'p60', '--out', join(work, 'out'))));
  const html = join(work, 'out/submission.html');
  const one = Math.min(await barePrint(html, work), await barePrint(html, work));
  say(`print of 60 notes and ${count} photos: cold ${shown(cold)}, warm ${shown(warm)}`);
  say(
    `  one bare print of the same HTML: ${one.toFixed(2)} s; preparing the photos alone: ${preparation.toFixed(2)} s`,
  );
  say(
    `  ratios: warm / bare ${(warm.seconds / one).toFixed(2)} (wanted: 1.3), cold / (preparation + bare) ${(cold.seconds / (preparation + one)).toFixed(2)} (wanted: 1.5)`,
  );
  say(`  PDF ${(statSync(join(work, 'out/submission.pdf')).size / 1e6).toFixed(1)} MB`);
  gusset('print', 'p60', '--out', join(work, 'mail'), '--photos', 'mail');
  say(`  PDF for mail ${(statSync(join(work, 'mail/submission.pdf')).size / 1e6).toFixed(1)} MB`);

  // 300 makes it a workshop's largest: 300 notes and 2,000 photos.
  const grown = Number(process.env['BENCH_LARGE'] ?? 0);
  for (const notes of grown > 0 ? [Math.ceil(grown / 4), grown] : []) {
    const name = `large${notes}`;
    makeBuild(join(work, name), notes, await makeManyPhotos(join(work, name), Math.ceil((notes * 20) / 3)));
    say(
      `print of ${notes} notes and ${Math.ceil((notes * 20) / 3)} photos, photos not prepared before: ${shown(gusset('print', name, '--out', join(work, `out-${name}`)))}`,
    );
    rmSync(join(work, name), { recursive: true });
  }

  // Last: a process that is started takes the peak of the one that starts it for its own.
  const converted = await convertedPrint(join(work, 'p60'), work);
  say(
    `the words and photos of the same notes by a general-purpose converter and the same browser: ${converted === undefined ? 'not installed (pandoc)' : `${converted.toFixed(2)} s`}`,
  );
} finally {
  rmSync(work, { recursive: true, force: true });
}

function spawnNode(): Ran {
  const before = process.hrtime.bigint();
  spawnSync(process.execPath, ['-e', '0']);
  return { seconds: Number(process.hrtime.bigint() - before) / 1e9, processor: NaN, megabytes: NaN };
}
