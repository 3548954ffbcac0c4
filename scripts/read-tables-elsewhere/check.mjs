// Reads the oldest and the newest version of a table with another engine, through the table's log, and compares the answers.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const [modules, factsFile] = process.argv.slice(2);
const require = createRequire(modules + '/');
const { query } = require('chdb');
const facts = JSON.parse(readFileSync(factsFile, 'utf8'));
process.chdir('/');

let failed = 0;
for (const expected of facts.versions) {
    const source = `deltaLakeLocal('${facts.table}') `;
    const settings = ` SETTINGS delta_lake_snapshot_version = ${expected.version}`;
    const ask = (what, where = '') => JSON.parse(query(`SELECT ${what} AS answer FROM ${source} ${where} ${settings}`, 'JSONEachRow').trim()).answer;
    const moment = text => `toDateTime64('${text}', 6, 'UTC')`;
    const answers = {
        rows: ask('count()'),
        columns: query(`DESCRIBE TABLE ${source} ${settings}`, 'TSV').trim().split('\n').length,
        withSpeed: ask('count(club_speed)'),
        sumOfSpeed: ask('sum(club_speed)'),
        ofP01: ask('count()', "WHERE participant = 'P01'"),
        ofNobody: ask('count()', 'WHERE participant IS NULL'),
        included: ask('count()', 'WHERE included'),
        named: ask('count()', "WHERE swing_id = 'Zürich 球 50'"),
        struckBetween: ask('count()', `WHERE struck_at BETWEEN ${moment(expected.struckFrom)} AND ${moment(expected.struckTo)}`),
        withForce: ask('count()', 'WHERE length(force) = 3'),
    };
    for (const [name, answer] of Object.entries(answers)) {
        const agrees = Math.abs(Number(answer) - expected[name]) <= 1e-9 * Math.abs(expected[name]);
        failed += agrees ? 0 : 1;
        console.log(`version ${expected.version} ${name}: ${answer} ${agrees ? 'agrees' : `but this program says ${expected[name]}`}`);
    }
}

process.exit(failed === 0 ? 0 : 1);
