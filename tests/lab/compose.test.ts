/** The compose file, as far as it can be tried without Docker: it is YAML, its services hold together, and what it says to the lab the lab knows. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readEnvironment } from '../../scoring/lab/settings.ts';

interface Service {
  image: string;
  command?: string[];
  environment: Record<string, string>;
  volumes: string[];
  depends_on?: Record<string, { condition: string }>;
  healthcheck?: { test: string[] };
  deploy?: { replicas: number };
}
const file = parse(readFileSync('scoring/lab/compose.yaml', 'utf8'), { merge: true }) as {
  services: Record<string, Service>;
  volumes: Record<string, null>;
};
const labs = Object.entries(file.services).filter(([, s]) => s.command !== undefined);

/** What the shell would make of `${NAME:?why}`. */
const filled = (text: string): string =>
  text.replace(
    /\$\{(\w+)(?::\?[^}]*)?\}/g,
    (_, name: string) => ({ LAB_DATABASE_PASSWORD: 'gorse' })[name] ?? 'w'.repeat(20),
  );

describe('the compose file', () => {
  it('has a database, a service and two workers, and every service and volume it points at', () => {
    expect(Object.keys(file.services)).toEqual(['database', 'service', 'worker']);
    expect(file.services.worker?.deploy?.replicas).toBe(2);
    for (const [name, service] of Object.entries(file.services)) {
      for (const [other, { condition }] of Object.entries(service.depends_on ?? {})) {
        expect(file.services[other], `${name} depends on ${other}`).toBeDefined();
        if (condition === 'service_healthy') expect(file.services[other]?.healthcheck, other).toBeDefined();
      }
      for (const volume of service.volumes) {
        const [from] = volume.split(':');
        if (!from!.startsWith('.')) expect(Object.keys(file.volumes), `${name}: ${volume}`).toContain(from);
      }
    }
  });

  it('sets what the lab reads from its environment, to values it takes', () => {
    for (const [name, { environment }] of labs) {
      const set = Object.fromEntries(Object.entries(environment).map(([key, value]) => [key, filled(value)]));
      const read = readEnvironment(set) as Record<string, unknown>;
      for (const key of Object.keys(set)) expect(read[key], `${name}: ${key}`).toBeDefined();
      // The database it names is the service beside it.
      const url = new URL(set.DATABASE_URL!);
      const database = file.services.database!.environment;
      expect(url.hostname).toBe('database');
      expect([url.username, url.pathname.slice(1)]).toEqual([database.POSTGRES_USER, database.POSTGRES_DB]);
    }
  });

  it('starts the program that is here, by commands and options it knows', () => {
    for (const [name, { command }] of labs) {
      const [node, ...args] = command!;
      const at = args.indexOf('scoring/lab/main.ts');
      expect([node, ...args.slice(0, at)], name).toEqual(['node', '--import', 'tsx']);
      expect(existsSync(args[at]!)).toBe(true);
      const rest = args.slice(at + 1);
      const sub = rest[0]!.startsWith('--') ? 'serve' : rest[0]!;
      const help = execFileSync(process.execPath, ['--import', 'tsx', 'scoring/lab/main.ts', sub, '--help'], {
        encoding: 'utf8',
      });
      for (const option of rest.filter((word) => word.startsWith('--')))
        expect(help, `${name}: ${option}`).toContain(`${option} `);
    }
  }, 60_000);
});
