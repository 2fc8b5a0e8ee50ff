/** What address is handed to pupils, and why there may be none. */
import { expect, test } from 'vitest';
import { handOver, hostedAddress } from '../../src/app/hand-over.ts';

test('a page served over https hands on its own address, without the place it stands at', () => {
  expect(handOver('https://school.example/lampnote/#/class', '')).toEqual({
    kind: 'address',
    address: 'https://school.example/lampnote/',
  });
});

test.each([
  ['file:///media/stick/index.html', 'one file'],
  ['http://localhost:4173/#/class', 'this computer only'],
  ['http://127.0.0.1:4173/', 'this computer only'],
  ['http://[::1]:4173/', 'this computer only'],
  ['https://localhost:4173/', 'this computer only'],
  ['http://192.168.1.20:4173/', 'not secure'],
])('%s gives no address: %s', (here, why) => {
  expect(handOver(here, '')).toEqual({ kind: 'none', why });
});

test('a typed https address is handed on from anywhere; anything else that is typed is not', () => {
  const typed = ' https://school.example/lampnote/#/listen ';
  expect(handOver('file:///index.html', typed)).toEqual({
    kind: 'address',
    address: 'https://school.example/lampnote/',
  });
  for (const text of ['', 'school.example', 'http://school.example/', 'javascript:alert(1)'])
    expect(hostedAddress(text)).toBeNull();
});
