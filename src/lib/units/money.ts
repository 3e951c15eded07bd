// The ISO 4217 codes of the money in use. The sheet's own code is a unit of its own dimension; any
// other is recognised, so that the problem can say that a rate is wanted, rather than "not known".
// Source: ISO 4217, list one, from memory; funds codes, metals and test codes left out.

const codes = `
  AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD
  CAD CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP
  GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD
  KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN
  NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP
  SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES
  VND VUV WST XAF XCD XOF XPF YER ZAR ZMW ZWG
`;

export const moneyCodes: ReadonlySet<string> = new Set(codes.trim().split(/\s+/));

/** Currency signs and the codes they most likely stand for; a sign is offered a code, never read. */
export const moneySigns: ReadonlyMap<string, readonly string[]> = new Map([
  ['€', ['EUR']],
  ['£', ['GBP']],
  ['$', ['USD', 'CAD', 'AUD']],
  ['¥', ['JPY', 'CNY']],
  ['₹', ['INR']],
  ['₩', ['KRW']]
]);
