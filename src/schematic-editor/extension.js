'use strict';
// Starts the program and lets it answer for panel files. All that is known of the language is in the program and in the grammar.
const { workspace } = require('vscode');
const { LanguageClient } = require('vscode-languageclient/node');

let client;

exports.activate = async function activate() {
  const settings = workspace.getConfiguration('schematic');
  const server = { command: settings.get('program'), args: settings.get('arguments') };
  client = new LanguageClient('schematic', 'Schematic', { run: server, debug: server }, {
    documentSelector: [{ language: 'schematic-panel' }],
    synchronize: { fileEvents: workspace.createFileSystemWatcher('**/*.{panel,readings}') },
  });
  await client.start();
};

exports.deactivate = function deactivate() {
  return client ? client.stop() : undefined;
};
