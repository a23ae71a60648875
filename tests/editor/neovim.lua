-- Drives the program as Neovim's own client does; run-neovim starts it.
-- BENCHCARD is the program, WORK an empty folder.
local failed, passed = 0, 0
local function check(name, holds, seen)
  if holds then
    passed = passed + 1
  else
    failed = failed + 1
    io.stdout:write('FAILED ' .. name .. ': ' .. vim.inspect(seen) .. '\n')
  end
end

local function wait_for(what)
  return vim.wait(20000, what, 10)
end

local function main()
  local work = os.getenv('WORK')
  vim.o.hidden = true
  local file = work .. '/tart.recipe'
  vim.fn.writefile({
    'recipe: 𝕏 tart',
    'measures: us',
    'revison: 3',
    '2 cups  plain flour',
    '100 g caster sugar',
    '- Mix [flour] with [sugar].',
  }, file)
  vim.cmd('edit ' .. file)
  check('the type of the file, with stock detection on', vim.bo.filetype == 'recipe', vim.bo.filetype)
  check('comments', vim.bo.commentstring == '# %s', vim.bo.commentstring)

  local function colour(line, column)
    return vim.fn.synIDattr(vim.fn.synID(line, column, 1), 'name')
  end
  check('colours', colour(1, 1) == 'recipeOpens' and colour(2, 1) == 'recipeKey' and colour(2, 12) == 'recipeValue'
    and colour(4, 1) == 'recipeAmount' and colour(4, 3) == 'recipeUnit' and colour(4, 9) == 'recipeLine'
    and colour(6, 1) == 'recipeStep' and colour(6, 8) == 'recipeBracket', {
    colour(1, 1), colour(2, 1), colour(2, 12), colour(4, 1), colour(4, 3), colour(4, 9), colour(6, 1), colour(6, 8) })

  local code
  local buffer = vim.api.nvim_get_current_buf()
  local id = vim.lsp.start_client({
    name = 'benchcard',
    cmd = { os.getenv('BENCHCARD'), 'language-server' },
    root_dir = work,
    flags = { debounce_text_changes = 0 },
    on_exit = function(c) code = c end,
  })
  vim.lsp.buf_attach_client(buffer, id)
  check('it starts', wait_for(function() return vim.lsp.buf_get_clients(buffer)[id] ~= nil end))

  local function lines() return vim.api.nvim_buf_get_lines(buffer, 0, -1, false) end
  local function said() return vim.diagnostic.get(buffer) end
  check('it says what is wrong', wait_for(function() return #said() == 1 end), said())
  check('at its place', said()[1].lnum == 2 and said()[1].col == 0 and said()[1].end_col == 7, said())
  check('with its kind', said()[1].code == 'unknown-setting' or said()[1].user_data.lsp.code == 'unknown-setting', said())

  local function ask(method, params)
    local answers, why = vim.lsp.buf_request_sync(buffer, method, params, 10000)
    check(method .. ' is answered', answers and answers[id] and not answers[id].err, why or answers)
    return answers and answers[id] and answers[id].result
  end
  local function at(line, column)
    vim.api.nvim_win_set_cursor(0, { line, column })
    return vim.lsp.util.make_position_params()
  end

  vim.ui.select = function(items, _, chosen) chosen(items[1], 1) end
  vim.api.nvim_win_set_cursor(0, { 3, 2 })
  vim.lsp.buf.code_action()
  check('a repair is made', wait_for(function() return lines()[3] == 'revision: 3' end), lines())
  check('and nothing is wrong any more', wait_for(function() return #said() == 0 end), said())

  local hover = ask('textDocument/hover', at(4, 10))
  check('hover', hover and hover.contents.value:find('125 g', 1, true) == nil
    and hover.contents.value:find('250 g', 1, true) ~= nil, hover)

  vim.api.nvim_buf_set_lines(buffer, 4, 4, false, { '1 tbsp  vanilla ex' })
  local offered = ask('textDocument/completion', at(5, 18))
  local labels = {}
  for _, item in ipairs(offered and offered.items or {}) do labels[item.label] = item.detail end
  check('completion', labels['vanilla extract'] ~= nil and labels['vanilla extract']:find('13 g', 1, true) ~= nil, labels)
  vim.api.nvim_buf_set_lines(buffer, 4, 5, false, {})

  vim.lsp.buf.formatting_sync(nil, 10000)
  check('formatting', lines()[4] == '2   cups   plain flour' and lines()[5] == '100 g      caster sugar', lines())

  at(5, 12)
  vim.lsp.buf.rename('demerara sugar')
  check('rename', wait_for(function()
    return lines()[5] == '100 g      demerara sugar' and lines()[6] == '- Mix [flour] with [demerara sugar].'
  end), lines())

  local symbols = ask('textDocument/documentSymbol', { textDocument = vim.lsp.util.make_text_document_params() })
  check('the outline', symbols and symbols[1].name == '𝕏 tart', symbols)

  vim.cmd('write')
  vim.lsp.stop_client(id)
  check('it ends when it is asked to', wait_for(function() return code ~= nil end) and code == 0, code)
end

local fine, why = xpcall(main, debug.traceback)
if not fine then
  failed = failed + 1
  io.stdout:write(tostring(why) .. '\n')
end
io.stdout:write(string.format('%d passed, %d failed\n', passed, failed))
vim.cmd(failed == 0 and 'qall!' or 'cquit! 1')
