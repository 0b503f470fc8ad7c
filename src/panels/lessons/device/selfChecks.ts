import { book, probeStore } from '../../../record';
import { formatNumber } from '../../../words';
import { runSelfTest } from './selfTest';

/** One claim, looked into on the spot. */
export interface SelfCheck {
  readonly title: string;
  readonly holds: boolean;
  readonly word: string;
  readonly details: readonly string[];
}

const pathOf = (address: string): string => {
  const { pathname } = new URL(address);
  return pathname.slice(pathname.lastIndexOf('/') + 1) || 'the page itself';
};

/** Everything this page asked for since it was opened, as the browser recorded it. */
function requests(): SelfCheck {
  const entries = [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')];
  // Addresses that begin with blob: or data: lie inside the page.
  const outside = entries.map(({ name }) => name).filter((name) => /^(https?|wss?):/.test(name));
  const strangers = outside.filter((name) => new URL(name).origin !== location.origin);
  const holds = strangers.length === 0;
  return {
    title: 'Requests',
    holds,
    word: holds ? `${outside.length} requests, every one to this address` : `${strangers.length} requests elsewhere`,
    details: holds
      ? [`Address: ${location.origin}`, `The last: ${outside.slice(-4).map(pathOf).join(', ')}`]
      : strangers.slice(0, 8),
  };
}

/** The rule the browser holds this page to, as it stands in the page. */
function policy(): SelfCheck {
  const text = document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.getAttribute('content') ?? '';
  const rules = text.split(';').map((rule) => rule.trim());
  const holds = rules.includes("default-src 'none'") && rules.includes("connect-src 'self'");
  return {
    title: 'The lock',
    holds,
    word: holds ? 'The browser blocks every other address' : 'This copy is not locked (a workshop copy)',
    details: rules.filter((rule) => /^(default|script|connect)-src/.test(rule)),
  };
}

/** What lies on the device, counted; and a word written, read back and removed. */
async function storage(): Promise<SelfCheck> {
  const probe = await probeStore();
  const ours = Object.keys(localStorage).filter((key) => key.startsWith('slantwise.'));
  const { usage } = (await navigator.storage?.estimate?.()) ?? {};
  const { records, meta } = book.state.getState();
  return {
    title: 'Storage',
    holds: probe === 'read back',
    word: probe === 'read back' ? 'Written, read back and removed again' : `The store answers: ${probe}`,
    details: [
      `${records.size} records in the lesson book`,
      `${ours.length} texts beside it: ${ours.map((key) => key.slice('slantwise.'.length)).join(', ') || 'none'}`,
      ...(usage === undefined ? [] : [`${formatNumber(usage / 1e6, 1)} MB in all, the program included`]),
      meta.promised === true ? 'The browser promises to keep it' : 'The browser may clear it when space runs out',
    ],
  };
}

/** The computation against numbers from outside. */
function kernel(): SelfCheck {
  const { made, held, worst } = runSelfTest();
  return {
    title: 'The computation',
    holds: made === held,
    word: `${held} of ${made} stored reference numbers met`,
    details: [
      `Postures computed beforehand by MuJoCo; the largest difference is ${worst.toExponential(1)} m`,
      'Flight without air against the closed formula',
    ],
  };
}

/** All four, one after the other. */
export const runSelfChecks = async (): Promise<readonly SelfCheck[]> => [
  requests(),
  policy(),
  await storage(),
  kernel(),
];
