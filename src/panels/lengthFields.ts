import { LENGTHS, type Units } from '../words';

/** How a length in metres stands in a field: centimetres or inches, to the millimetre or the twentieth of an inch. */
export function lengthField({ length }: Pick<Units, 'length'>) {
  const { metres, symbol } = LENGTHS[length];
  return {
    unit: symbol as string,
    decimals: length === 'cm' ? 1 : 2,
    toField: (valueM: number): number => valueM / metres,
    fromField: (typed: number): number => Number((typed * metres).toFixed(6)),
  };
}

/** Why a number outside its limits cannot be taken: what was typed, what is expected. Undefined inside. */
export function outside(label: string, typed: number, min: number, max: number, unit: string, decimals = 0) {
  if (typed >= min && typed <= max) return undefined;
  const show = (value: number): string => String(Number(value.toFixed(decimals))).replace('-', '−');
  return `${label} ${String(typed).replace('-', '−')} ${unit} is outside ${show(min)} to ${show(max)} ${unit}. Enter a value inside.`;
}
