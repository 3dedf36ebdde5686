/** Queries and commands of the station as React hooks, typed by the contract. */
import { keepPreviousData, useQuery, useQueryClient } from '@tanstack/react-query';
import { useCallback, useState } from 'react';
import type { Language } from '../../src/domain/message.ts';
import type { CallError, CallResult, InputOf, OperationName, OutputOf } from '../../src/station/contract.ts';
import { useLanguage } from '../i18n/language.ts';
import { call } from './client.ts';
import { whileUnderWay } from './under-way.ts';

/** A refusal of the station on its way through the query cache. */
class CallFailure extends Error {
  readonly callError: CallError;

  constructor(callError: CallError) {
    super(callError.sentence);
    this.callError = callError;
  }
}

export interface StationQuery<Output> {
  /** The latest answer; it stays while a newer one is fetched and while the window is locked, but not after signing out. */
  readonly data: Output | undefined;
  readonly error: CallError | undefined;
  readonly isPending: boolean;
  /** An answer is on its way, the first or a newer one. */
  readonly isFetching: boolean;
  refetch(): void;
}

export interface StationQueryOptions {
  readonly enabled?: boolean;
  /** Goes on showing the answer to the previous input while the next is on its way. */
  readonly keepPrevious?: boolean;
  /** Asks anew after so many milliseconds, again and again; not at all where it is absent. */
  readonly everyMs?: number;
}

/** An answer is kept with the question and the language in which it was asked. */
export const queryKeyOf = <Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
  language: Language,
): readonly unknown[] => [name, input, language];

export const useStationQuery = <Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
  { enabled = true, keepPrevious = false, everyMs }: StationQueryOptions = {},
): StationQuery<OutputOf<Name>> => {
  const language = useLanguage();
  const query = useQuery<OutputOf<Name>, CallFailure>({
    queryKey: queryKeyOf(name, input, language),
    queryFn: async () => {
      const result = await call(name, input);
      if (!result.ok) throw new CallFailure(result.error);
      return result.output;
    },
    enabled,
    ...(everyMs === undefined ? {} : { refetchInterval: everyMs }),
    ...(keepPrevious ? { placeholderData: keepPreviousData } : {}),
  });
  const error = query.error?.callError;
  const isLocked = error?.code === 'session-locked';
  return {
    data: error?.code === 'sign-in-needed' ? undefined : query.data,
    error: isLocked ? undefined : error,
    isPending: enabled && (query.isPending || isLocked),
    isFetching: query.isFetching,
    refetch: () => void query.refetch(),
  };
};

/** Everything but the station itself is shown to somebody who signed in, and forgotten when they sign out. */
const isPersonal = ({ queryKey }: { readonly queryKey: readonly unknown[] }): boolean =>
  queryKey[0] !== 'station.status';

export interface StationCommand<Name extends OperationName> {
  /** Never rejects. Everything that the screens show is asked for anew before the promise resolves. */
  run(input: InputOf<Name>): Promise<CallResult<OutputOf<Name>>>;
  readonly isRunning: boolean;
  /** The refusal of the latest run. */
  readonly error: CallError | undefined;
  /** Takes the refusal off the screen. */
  clear(): void;
}

export const useStationCommand = <Name extends OperationName>(name: Name): StationCommand<Name> => {
  const queries = useQueryClient();
  const [isRunning, setRunning] = useState(false);
  const [error, setError] = useState<CallError>();
  const run = useCallback(
    (input: InputOf<Name>) =>
      whileUnderWay(
        (async () => {
          setRunning(true);
          setError(undefined);
          const result = await call(name, input);
          if (name === 'session.sign-out') await queries.resetQueries({ predicate: isPersonal });
          await queries.invalidateQueries();
          setError(result.ok ? undefined : result.error);
          setRunning(false);
          return result;
        })(),
      ),
    [name, queries],
  );
  return { run, isRunning, error, clear: useCallback(() => setError(undefined), []) };
};
