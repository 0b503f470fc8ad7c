declare module 'jstat' {
  const jStat: {
    readonly beta: { readonly inv: (p: number, alpha: number, beta: number) => number };
    readonly binomial: { readonly cdf: (k: number, n: number, p: number) => number };
  };
  export default jStat;
}
