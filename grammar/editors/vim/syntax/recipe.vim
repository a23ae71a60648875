" Recipes for benchcard.
if exists('b:current_syntax')
  finish
endif

syn case ignore

syn match recipeUnit /\v<(mg|g|kg|oz|lbs?|ml|cl|dl|l|fl\.? oz|tsps?|tbsps?|dsp|cups?|pints?|pt|quarts?|qt|gallons?|gal|gills?|sticks?|pinch(es)?|dash(es)?|drops?|(milli|kilo)?gram(me)?s?|kilos?|ounces?|pounds?|fluid ounces?|(milli|centi|deci)?lit(re|er)s?|(tea|table|dessert)spoons?)>\.?/ contained
syn match recipeAmount /\v^\s*((about|ca\.?)\s+|\~\s*)?([0-9½¼¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚][0-9½¼¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚., /⁄–x×-]*|(half|an?|all|some)>)/ contained nextgroup=recipeFilled,recipeUnit skipwhite
syn match recipeFilled /\v<(level|packed|heaped|heaping|rounded|scant)>/ contained nextgroup=recipeUnit skipwhite
syn match recipeEquals /\v\=\s*[0-9½¼¾.]+\s*(mg|g|kg|oz|lb)>/ contained
syn match recipeLine /\v^\s*(about>|ca>|\~|[0-9½¼¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚]|(half|an?|all|some)\s).*$/ contains=recipeAmount,recipeEquals,recipeComment

syn match recipeSetting /\v^\s*[a-z][a-z_-]*\s*:/ contains=recipeKey,recipeOpens nextgroup=recipeValue
syn keyword recipeKey contained by source revision date makes serves measures labels note caution use station per loss keeps tin tray percent accept also weighs raw whole costs require
syn match recipeKey /\v<(contains|whole-batch|at-most|at-least|may-contain|scale-step)>/ contained
syn keyword recipeOpens contained recipe component assembly ingredient
syn match recipeValue /.*$/ contained contains=recipeComment,recipeEscape

syn match recipeStep /^\s*-\ze\(\s\|$\)/
syn region recipeBracket matchgroup=recipeDelimiter start=/\[/ end=/\]/ oneline contains=recipePart
syn match recipePart /:\s*[^]]*/ contained
syn match recipeEscape /\\[][\\#]/
syn match recipeComment /\(^\|\s\)\zs#.*$/ contains=@Spell

hi def link recipeOpens Keyword
hi def link recipeKey Identifier
hi def link recipeValue String
hi def link recipeAmount Number
hi def link recipeUnit Type
hi def link recipeFilled Type
hi def link recipeEquals Number
hi def link recipeStep Statement
hi def link recipeBracket Special
hi def link recipeDelimiter Delimiter
hi def link recipePart Number
hi def link recipeEscape SpecialChar
hi def link recipeComment Comment

let b:current_syntax = 'recipe'
