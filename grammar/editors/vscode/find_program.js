// Where the program is: as set, else on the PATH, else built in one of the open folders.
const fs = require('fs');
const path = require('path');

function is_program(file) {
  try {
    fs.accessSync(file, fs.constants.X_OK);
    return fs.statSync(file).isFile();
  } catch {
    return false;
  }
}

function find_program(setting, folders, search_path = process.env.PATH ?? '') {
  if (setting) return is_program(setting) ? setting : undefined;
  const on_path = search_path.split(path.delimiter).filter(Boolean).map((p) => path.join(p, 'benchcard'));
  const built = folders.map((f) => path.join(f, 'build', 'benchcard'));
  return [...on_path, ...built].find(is_program);
}

module.exports = { find_program };
