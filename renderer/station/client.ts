/** How the screens reach the station: over the desktop shell where there is one, else over the loopback host. */
import type { Language } from '../../src/domain/message.ts';
import type {
  Call,
  CallError,
  CallResult,
  InputOf,
  OperationName,
  OutputOf,
} from '../../src/station/contract.ts';
import { catalogue, currentLanguage } from '../i18n/catalogue.ts';
import { callThroughShell } from './shell-bridge.ts';

/** Never rejects: a lost connection is an error with the code `station-unreachable`. */
export const call: Call = async <Name extends OperationName>(
  name: Name,
  input: InputOf<Name>,
): Promise<CallResult<OutputOf<Name>>> => {
  try {
    const answer = await carry(name, input, currentLanguage());
    if (isCallResult(answer)) return answer as CallResult<OutputOf<Name>>;
  } catch {
    // Said in words below, as for any answer that is not one of the station's.
  }
  return {
    ok: false,
    error: { code: 'station-unreachable', sentence: catalogue.t('screens:errors.stationUnreachable') },
  };
};

const carry = async (operation: OperationName, input: unknown, language: Language): Promise<unknown> => {
  const carried = callThroughShell(operation, input, language);
  if (carried !== undefined) return carried;
  const response = await fetch('/call', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ operation, input, language }),
  });
  return response.json();
};

const isCallResult = (answer: unknown): boolean => {
  if (typeof answer !== 'object' || answer === null || !('ok' in answer)) return false;
  return answer.ok === true ? 'output' in answer : 'error' in answer;
};

/** True of what says nothing about the question: it is to be asked again. */
export const isPassing = ({ code }: CallError): boolean =>
  code === 'station-unreachable' || code === 'session-locked';
