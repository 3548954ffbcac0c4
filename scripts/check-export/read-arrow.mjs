// Prints, for each table and column: table, column, type, rows, values present, sum (numbers, truths, lists) or sum of lengths (texts).
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { tableFromIPC, DataType } from 'apache-arrow';

const folder = join(process.argv[2], 'arrow');
const kind = (type) =>
  DataType.isTimestamp(type) ? 'moment' : DataType.isBool(type) ? 'truth' : DataType.isInt(type) ? 'integer' : DataType.isFloat(type) ? 'number' :
  DataType.isList(type) ? 'list' : 'text';
const measure = (value, type) => {
  if (type === 'text') return [...value].length;
  if (type === 'list') return [...value].reduce((sum, number) => sum + (number ?? 0), 0);
  return Number(value);
};
const exponent = (value) => {
  const [digits, power] = value.toExponential(6).split('e');
  return `${digits}e${power[0]}${power.slice(1).padStart(2, '0')}`;
};
for (const file of readdirSync(folder).filter((name) => name.endsWith('.arrow')).sort()) {
  const table = tableFromIPC(readFileSync(join(folder, file)));
  for (const field of table.schema.fields) {
    const type = kind(field.type);
    let present = 0;
    let sum = 0;
    for (const value of table.getChild(field.name)) {
      if (value === null) continue;
      present += 1;
      sum += measure(value, type);
    }
    console.log(`${file.replace('.arrow', '')} ${field.name} ${type} ${table.numRows} ${present} ${exponent(sum)}`);
  }
}
