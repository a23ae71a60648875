" Vim and Neovim take *.recipe for another type; `set` instead of `setfiletype` overrides that.
autocmd BufRead,BufNewFile *.recipe set filetype=recipe
