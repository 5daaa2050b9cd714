import { join } from 'node:path';

/** What the search for a browser may look at; tests put their own machine here. */
export interface Machine {
  platform: NodeJS.Platform;
  arch: string;
  env: Record<string, string | undefined>;
  home: string;
  exists: (path: string) => boolean;
}

/** Headless shells first: they print 1.3–1.5 times faster than a whole browser. Snap last: it cannot read every folder. */
const linuxNames = [
  'chrome-headless-shell',
  'chromium-headless-shell',
  'google-chrome-stable',
  'google-chrome',
  'chromium',
  'chromium-browser',
  'microsoft-edge-stable',
  'microsoft-edge',
];
const macApps = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
const windowsPrograms = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** The usual places of Chrome, Chromium and Edge on this system, best first; whether a browser is there is not looked at. */
export function usualPlaces({ platform, env, home }: Machine): string[] {
  if (platform === 'darwin') {
    return ['/Applications', join(home, 'Applications')].flatMap((folder) =>
      macApps.map((app) => `${folder}/${app}.app/Contents/MacOS/${app}`),
    );
  }
  if (platform === 'win32') {
    const roots = [env['ProgramFiles'], env['ProgramFiles(x86)'], env['LocalAppData'] ?? env['LOCALAPPDATA']];
    return roots
      .filter((root) => root !== undefined)
      .flatMap((root) => windowsPrograms.map((program) => `${root}\\${program}`));
  }
  const folders = [
    ...new Set([
      ...(env['PATH'] ?? '').split(':').filter((folder) => folder.startsWith('/')),
      '/usr/bin',
      '/usr/local/bin',
    ]),
  ].filter((folder) => !folder.startsWith('/snap'));
  return [
    ...linuxNames.flatMap((name) => folders.map((folder) => `${folder}/${name}`)),
    '/opt/google/chrome/chrome',
    '/opt/microsoft/msedge/msedge',
    '/usr/lib/chromium/chromium',
    '/usr/lib64/chromium-browser/chromium-browser',
    '/snap/bin/chromium',
  ];
}
