" Recipes for benchcard.
if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

setlocal comments=:# commentstring=#\ %s
setlocal expandtab shiftwidth=2 softtabstop=2 textwidth=100
setlocal formatoptions-=t formatoptions+=croql
let b:undo_ftplugin = 'setlocal comments< commentstring< expandtab< shiftwidth< softtabstop< textwidth< formatoptions<'

if executable('benchcard')
  setlocal makeprg=benchcard\ check\ --format\ gcc\ %:S
  setlocal errorformat=%f:%l:%c:\ %trror:\ %m,%f:%l:%c:\ %tarning:\ %m,%f:%l:%c:\ hint:\ %m,%f:%l:%c:\ note:\ %m
  let b:undo_ftplugin .= ' makeprg< errorformat<'
endif
