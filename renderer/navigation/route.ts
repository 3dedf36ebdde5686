/** Where the window is: the routes, and the hash of the address in which they are kept. */
import { useMemo, useSyncExternalStore } from 'react';
import {
  type BenchId,
  benchIdSchema,
  type CalendarDate,
  calendarDateSchema,
} from '../../src/domain/brand.ts';
import { type TagKind, tagKindSchema } from '../../src/domain/tag-content.ts';

/** The lists of the register that have a name of their own. */
export const registerFilters = [
  'in-service',
  'ready',
  'out',
  'never-inspected',
  'due-soon',
  'overdue',
  'held',
  'scrapped',
  'unproved',
] as const;
export type RegisterFilter = (typeof registerFilters)[number];

export type Route =
  | { readonly screen: 'start' }
  | { readonly screen: 'register'; readonly filter?: RegisterFilter | undefined }
  | {
      readonly screen: 'new-device';
      readonly code?: string | undefined;
      readonly benchId?: BenchId | undefined;
    }
  | { readonly screen: 'device'; readonly benchId: BenchId }
  | { readonly screen: 'lifeline'; readonly benchId: BenchId }
  | { readonly screen: 'bench'; readonly inspection?: number | undefined }
  | { readonly screen: 'tag'; readonly benchId: BenchId; readonly kind: TagKind }
  | { readonly screen: 'who'; readonly identityCase?: number | undefined }
  | { readonly screen: 'relabel'; readonly benchId: BenchId }
  | { readonly screen: 'markings' }
  | { readonly screen: 'notices' }
  | { readonly screen: 'new-notice' }
  | { readonly screen: 'notice'; readonly notice: number }
  /** Every held device, or one of them. */
  | { readonly screen: 'held'; readonly benchId?: BenchId | undefined }
  /** Every return batch, or one of them. */
  | { readonly screen: 'returns'; readonly batch?: number | undefined }
  /** What the plan of returns is made of, one of its decisions from 1 on, or all of it. */
  | { readonly screen: 'returns-plan'; readonly page?: 'data' | number | undefined }
  /** `benchId`: a device whose return begins there. */
  | { readonly screen: 'desk'; readonly benchId?: BenchId | undefined }
  | { readonly screen: 'custody' }
  | { readonly screen: 'kits' }
  | { readonly screen: 'count'; readonly place?: string | undefined }
  | { readonly screen: 'corrections'; readonly benchId: BenchId }
  | { readonly screen: 'person'; readonly personId: string }
  /** `week`: any day of it. */
  | { readonly screen: 'schedule'; readonly week?: CalendarDate | undefined }
  /** The blind second inspections. */
  | { readonly screen: 'reinspections' }
  | { readonly screen: 'records'; readonly benchId?: BenchId | undefined }
  | { readonly screen: 'record'; readonly inspection: number }
  | { readonly screen: 'insight' }
  /** Cautions and limits. */
  | { readonly screen: 'limits' }
  /** The first panel where none is named. */
  | { readonly screen: 'setup'; readonly panel?: string | undefined };

/** Of every screen but the first. */
export type LaterRoute = Exclude<Route, { readonly screen: 'start' }>;

export const hashOf = (route: Route): string => {
  switch (route.screen) {
    case 'start':
      return '#/';
    case 'register':
      return `#/register${queryOf({ show: route.filter })}`;
    case 'new-device':
      return `#/new-device${queryOf({ code: route.code, id: route.benchId })}`;
    case 'device':
      return `#/device/${route.benchId}`;
    case 'lifeline':
      return `#/lifeline/${route.benchId}`;
    case 'bench':
      return route.inspection === undefined ? '#/bench' : `#/bench/${route.inspection}`;
    case 'tag':
      return `#/tag/${route.benchId}/${route.kind}`;
    case 'who':
      return route.identityCase === undefined ? '#/who' : `#/who/${route.identityCase}`;
    case 'relabel':
      return `#/relabel/${route.benchId}`;
    case 'markings':
      return '#/markings';
    case 'held':
      return route.benchId === undefined ? '#/held' : `#/held/${route.benchId}`;
    case 'returns':
      return route.batch === undefined ? '#/returns' : `#/returns/${route.batch}`;
    case 'returns-plan':
      return route.page === undefined ? '#/returns-plan' : `#/returns-plan/${route.page}`;
    case 'insight':
      return '#/insight';
    case 'notices':
      return '#/notices';
    case 'new-notice':
      return '#/notices/new';
    case 'notice':
      return `#/notices/${route.notice}`;
    case 'desk':
      return route.benchId === undefined ? '#/desk' : `#/desk/${route.benchId}`;
    case 'custody':
    case 'kits':
    case 'limits':
    case 'reinspections':
      return `#/${route.screen}`;
    case 'count':
      return route.place === undefined ? '#/count' : `#/count/${route.place}`;
    case 'corrections':
      return `#/corrections/${route.benchId}`;
    case 'person':
      return `#/person/${route.personId}`;
    case 'schedule':
      return route.week === undefined ? '#/schedule' : `#/schedule/${route.week}`;
    case 'records':
      return `#/records${queryOf({ device: route.benchId })}`;
    case 'record':
      return `#/records/${route.inspection}`;
    case 'setup':
      return route.panel === undefined ? '#/setup' : `#/setup/${route.panel}`;
  }
};

/** A hash that is no route leads to the start screen. */
export const routeOf = (hash: string): Route => {
  const [path = '', query = ''] = hash.replace(/^#?\/?/, '').split('?', 2);
  const [screen, first, second] = path.split('/');
  const values = new URLSearchParams(query);
  const benchId = benchIdSchema.safeParse(screen === 'new-device' ? values.get('id') : first);
  switch (screen) {
    case 'register':
      return { screen, filter: registerFilters.find((filter) => filter === values.get('show')) };
    case 'new-device':
      return { screen, code: values.get('code') ?? undefined, benchId: benchId.data };
    case 'device':
    case 'lifeline':
      return benchId.success ? { screen, benchId: benchId.data } : { screen: 'start' };
    case 'bench':
      return /^[1-9]\d*$/.test(first ?? '') ? { screen, inspection: Number(first) } : { screen };
    case 'tag': {
      const kind = tagKindSchema.safeParse(second);
      return benchId.success && kind.success
        ? { screen, benchId: benchId.data, kind: kind.data }
        : { screen: 'start' };
    }
    case 'who':
      return /^[1-9]\d*$/.test(first ?? '') ? { screen, identityCase: Number(first) } : { screen };
    case 'held':
      return benchId.success ? { screen, benchId: benchId.data } : { screen };
    case 'returns':
      return /^[1-9]\d*$/.test(first ?? '') ? { screen, batch: Number(first) } : { screen };
    case 'returns-plan': {
      if (first === 'data') return { screen, page: first };
      return /^[1-9]\d*$/.test(first ?? '') ? { screen, page: Number(first) } : { screen };
    }
    case 'relabel':
    case 'corrections':
      return benchId.success ? { screen, benchId: benchId.data } : { screen: 'start' };
    case 'person':
      return /^[\w-]{1,60}$/.test(first ?? '') ? { screen, personId: first ?? '' } : { screen: 'start' };
    case 'schedule':
      return { screen, week: calendarDateSchema.safeParse(first).data };
    case 'records': {
      if (/^[1-9]\d*$/.test(first ?? '')) return { screen: 'record', inspection: Number(first) };
      return { screen, benchId: benchIdSchema.safeParse(values.get('device')).data };
    }
    case 'setup':
      return /^[a-z]+$/.test(first ?? '') ? { screen, panel: first } : { screen };
    case 'notices': {
      if (first === 'new') return { screen: 'new-notice' };
      return /^[1-9]\d*$/.test(first ?? '') ? { screen: 'notice', notice: Number(first) } : { screen };
    }
    case 'desk':
      return { screen, benchId: benchId.data };
    case 'markings':
    case 'insight':
    case 'limits':
    case 'reinspections':
    case 'custody':
    case 'kits':
      return { screen };
    case 'count':
      return /^[A-Z0-9]{1,12}$/.test(first ?? '') ? { screen, place: first } : { screen };
    default:
      return { screen: 'start' };
  }
};

export const navigate = (route: Route): void => {
  window.location.hash = hashOf(route);
};

export const useRoute = (): Route => {
  const hash = useSyncExternalStore(subscribe, () => window.location.hash);
  return useMemo(() => routeOf(hash), [hash]);
};

const subscribe = (changed: () => void): (() => void) => {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
};

const queryOf = (values: Readonly<Record<string, string | undefined>>): string => {
  const given = Object.entries(values).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value]],
  );
  return given.length === 0 ? '' : `?${new URLSearchParams(given)}`;
};
