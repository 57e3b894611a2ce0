// Computes ucum_codes.csv: node ucum_codes.cjs, with @lhncbc/ucum-lhc 7.1.10 installed beside it.
const { UcumLhcUtils } = require('@lhncbc/ucum-lhc');
const ucum = UcumLhcUtils.getInstance();
const codes = ['nL', 'uL', 'mL', 'L', 'ms', 's', 'min', 'h', 'nm', 'um', 'mm', 'cm', 'mm2', 'cm2', 'ug', 'mg', 'g', 'kg',
  'g/L', 'mg/L', 'ug/L', 'g/(100.mL)', 'mmol/L', 'umol/L', 'g/(100.g)', 'mg/kg', 'L.mol-1.cm-1', 'L.mmol-1.cm-1', 'g/mol',
  'g/mL', '%', '1', 'min-1'];
// A code and its factor against one of the same kind, so that a code that is valid but means another unit shows.
const against = (code) => {
  const units = ['L', 's', 'cm', 'mm2', 'g', 'g/L', 'mmol/L', 'g/g', 'L.mol-1.cm-1', 'g/mol', '1', 'min-1'];
  for (const unit of units) {
    const answer = ucum.convertUnitTo(code, 1, unit);
    if (answer.status === 'succeeded') {
      return [unit, answer.toVal];
    }
  }
  return ['', ''];
};
console.log('ucum,status,base,factor');
for (const code of codes) {
  console.log([code, ucum.validateUnitString(code).status, ...against(code)].join(','));
}
