import { LENGTHS, type Units } from '../../words';

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
