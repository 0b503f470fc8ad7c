// npx tsx .config/tradeRules.ts: tries the rules that ship and writes how they came out into assets/tradeRules.json.
import { writeFileSync } from 'node:fs';
import { TRADE_RULES } from '../src/edge/tradeRules';
import { tryTradeRule } from '../tests/reference/tradeRules';
import { format } from 'prettier';

const file = new URL('../assets/tradeRules.json', import.meta.url);
const results = Object.fromEntries(TRADE_RULES.map((one) => [one.name, tryTradeRule(one)]));
const about = 'How the rules that ship come out. Written by .config/tradeRules.ts; never edit it by hand.';
writeFileSync(file, await format(JSON.stringify({ about, results }), { parser: 'json', printWidth: 120 }));
for (const [name, { held, met }] of Object.entries(results)) console.log(`${name}: holds in ${held} of ${met}`);
