// Names and figures of the shipped ingredients, containers and recipes, straight from the files that the page is built of.
import { readdirSync, readFileSync } from 'node:fs';

const root = new URL('../../presets/', import.meta.url);
const read = (name) => JSON.parse(readFileSync(new URL(name, root), 'utf8'));

const ingredients = new Map(readdirSync(new URL('ingredients/', root)).filter((name) => name.endsWith('.json'))
    .flatMap((name) => read(`ingredients/${name}`).ingredients).map((one) => [one.id, one]));
const containers = new Map(read('containers.json').containers.map((one) => [one.id, one]));
const products = new Map(read('products.json').products.map((one) => [one.id, one]));

const found = (map, id) => {
    if (!map.has(id)) throw new Error(`the presets hold no ${id}`);
    return map.get(id);
};
export const ingredientName = (id) => found(ingredients, id).name;
export const container = (id) => found(containers, id);
export const productName = (id) => found(products, id).name;
export const recipe = (stem) => read(`recipes/${stem}.json`);
