// node compare_quadprog.mjs CASES_PROGRAM: two thousand random problems of least squares (nothing below nought, a given
// sum) whose answers the engine printed, worked out anew by quadprog, an independent program for quadratic programming
// (Goldfarb and Idnani's dual method; ours is a primal one): the sums of squares must be equal to 1e-6, the points to 1e-5.
// Exit 1 when anything differs.
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';

const { solveQP } = createRequire(import.meta.url)('quadprog');
const lines = execFileSync(process.argv[2], { encoding: 'utf8', maxBuffer: 1 << 28 }).trim().split('\n');
let passed = 0;
let failed = 0;
let farthest = 0;

// Its lists begin at 1. Least of x'Dx/2 - d'x with A'x >= b, the first of which are equations.
function reference({ columns, total, weights, wanted }) {
    const list = (count, of) => [undefined, ...Array.from({ length: count }, (_, i) => of(i))];
    const at = (row, column) => weights[row * columns + column];
    const over = (of) => wanted.reduce((sum, _, row) => sum + of(row), 0);
    const quadratic = list(columns, (i) => list(columns, (j) => over((row) => 2 * at(row, i) * at(row, j))));
    const linear = list(columns, (i) => over((row) => 2 * at(row, i) * wanted[row]));
    const bounds = list(columns, (i) => [undefined, 1, ...Array.from({ length: columns }, (_, j) => (i === j ? 1 : 0))]);
    const low = [undefined, total, ...Array(columns).fill(0)];
    const solved = solveQP(quadratic, linear, bounds, low, 1);
    if (solved.message) throw new Error(solved.message);
    return solved.solution.slice(1);
}

function residual({ columns, weights, wanted }, point) {
    return wanted.reduce((sum, value, row) => {
        const off = point.reduce((left, x, column) => left - weights[row * columns + column] * x, value);
        return sum + off * off;
    }, 0);
}

for (const line of lines) {
    const one = JSON.parse(line);
    const complaints = [];
    if (!one.settled) complaints.push('the engine says it is not settled');
    if (one.point.some((x) => !(x >= 0))) complaints.push('something is below nought');
    if (Math.abs(one.point.reduce((a, b) => a + b, 0) - one.total) > 1e-9 * one.total) complaints.push('another sum');
    const point = reference(one);
    const theirs = residual(one, point);
    const apart = Math.abs(one.residual - theirs);
    farthest = Math.max(farthest, apart);
    if (!(apart <= 1e-6)) complaints.push(`${one.residual} against ${theirs}`);
    if (Math.abs(residual(one, one.point) - one.residual) > 1e-9 * (1 + theirs)) complaints.push('the residual is not that of the point');
    if (point.some((x, i) => Math.abs(x - one.point[i]) > 1e-5 * one.total * one.columns)) complaints.push(`another point ${one.point} against ${point}`);
    if (complaints.length === 0) passed += 1;
    else if ((failed += 1) <= 10) console.log(`case ${passed + failed}: ${complaints.join('; ')}`);
}
console.log(`${passed} cases alike, ${failed} not, farthest apart ${farthest.toExponential(2)}`);
process.exit(failed === 0 && passed >= 1000 ? 0 : 1);
