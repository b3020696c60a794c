// Computes reference outputs with the weights' own runtime and writes one JSON file per model.
//   in a folder of its own: npm install --ignore-scripts @tensorflow/tfjs-core@4.22.0 @tensorflow/tfjs-converter@4.22.0 @tensorflow/tfjs-backend-cpu@4.22.0
//   then, with these two .mjs files copied beside its node_modules:
//   node make-reference.mjs <folder with the weights> <folder for the JSON files>
import fs from 'node:fs';
import path from 'node:path';
import * as tf from '@tensorflow/tfjs-core';
import { loadGraphModel } from '@tensorflow/tfjs-converter';
import '@tensorflow/tfjs-backend-cpu';
import { pixel } from './picture.mjs';

const [weights, target] = process.argv.slice(2);
const MEAN_BGR = [103.53, 116.28, 123.675];
const STD_BGR = [57.375, 57.12, 58.395];
const MOVENET = 'StatefulPartitionedCall/';

/** Rows, columns, channels. */
function interleaved(side, map) {
  const data = new Float32Array(side * side * 3);
  for (let y = 0; y < side; y++) for (let x = 0; x < side; x++) pixel(x, y, side).forEach((c, i) => { data[(y * side + x) * 3 + i] = map(c); });
  return data;
}

/** Channels B, G, R, each rows and columns, normalised. */
function planarBgr(side) {
  const data = new Float32Array(side * side * 3);
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) pixel(x, y, side).forEach((c, i) => { data[((2 - i) * side + y) * side + x] = (c - MEAN_BGR[2 - i]) / STD_BGR[2 - i]; });
  }
  return data;
}

const MODELS = [
  {
    name: 'movenet-thunder',
    input: () => ({ input: tf.tensor(Int32Array.from(interleaved(256, (c) => c)), [1, 256, 256, 3], 'int32') }),
    outputs: { kpt_heatmap: `${MOVENET}Sigmoid`, center: `${MOVENET}Sigmoid_1`, kpt_regress: `${MOVENET}kpt_regress_0/conv2d_6/BiasAdd`, kpt_offset: `${MOVENET}kpt_offset_0/conv2d_7/BiasAdd` },
  },
  {
    name: 'blazepose-heavy',
    input: () => ({ input_1: tf.tensor(interleaved(256, (c) => c / 255), [1, 256, 256, 3]) }),
    outputs: { ld_3d: 'Identity_2', poseflag: 'Identity_3', heatmap: 'Identity' },
  },
  {
    name: 'nanodet',
    input: () => ({ input_1: tf.tensor(planarBgr(416), [1, 3, 416, 416]) }),
    outputs: { scores_8: 'Identity', scores_16: 'Identity_1', scores_32: 'Identity_2', boxes_8: 'Identity_3', boxes_16: 'Identity_4', boxes_32: 'Identity_5' },
  },
];

/** Every step-th value (a prime step, so that all channels are met), at most about 400, with the sums over all. */
function sample(name, tensor) {
  const data = tensor.dataSync();
  let step = Math.max(1, Math.ceil(data.length / 400));
  const isPrime = (n) => { for (let d = 2; d * d <= n; d++) if (n % d === 0) return false; return true; };
  while (!isPrime(step)) step++;
  let sum = 0;
  let sumAbs = 0;
  let peak = 0;
  for (let i = 0; i < data.length; i++) {
    sum += data[i];
    sumAbs += Math.abs(data[i]);
    if (data[i] > data[peak]) peak = i;
  }
  const values = [];
  for (let i = 0; i < data.length; i += step) values.push(data[i]);
  return { name, shape: tensor.shape, step, sum, sumAbs, peakIndex: peak, peakValue: data[peak], values };
}

/** Reads topology and weights from disk; the runtime's own loader wants addresses. */
function fromDisk(name) {
  const model = JSON.parse(fs.readFileSync(path.join(weights, `${name}.json`)));
  const parts = model.weightsManifest.flatMap((g) => g.paths.map((p) => fs.readFileSync(path.join(weights, p))));
  const bytes = Buffer.concat(parts);
  return {
    load: async () => ({
      ...model,
      weightSpecs: model.weightsManifest.flatMap((g) => g.weights),
      weightData: bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength),
    }),
  };
}

await tf.setBackend('cpu');
fs.mkdirSync(target, { recursive: true });
for (const { name, input, outputs } of MODELS) {
  const model = await loadGraphModel(fromDisk(name));
  const results = model.execute(input(), Object.values(outputs));
  const list = Array.isArray(results) ? results : [results];
  const made = { model: name, runtime: `tfjs-core ${tf.version_core}, backend cpu`, outputs: Object.keys(outputs).map((o, i) => sample(o, list[i])) };
  fs.writeFileSync(path.join(target, `${name}.json`), `${JSON.stringify(made)}\n`);
  for (const o of made.outputs) console.log(name, o.name, o.shape.join('x'), 'peak', o.peakValue.toFixed(4), 'mean abs', (o.sumAbs / o.shape.reduce((a, b) => a * b)).toFixed(5));
}
