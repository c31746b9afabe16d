-- Opens the file given to nvim with the server of the environment's request; edits, formats and hovers; writes what it saw.
local ask = vim.fn.json_decode(vim.env.SPARWRIGHT_REQUEST)
local buffer = vim.api.nvim_get_current_buf()
-- Version of the text the last finished figures are of.
local settled = nil

local function fail(what)
  vim.fn.writefile({ vim.fn.json_encode({ failed = what }) }, ask.out)
  vim.cmd("qa!")
end

local client = vim.lsp.start_client({
  name = "sparwright",
  cmd = ask.command,
  root_dir = ask.root,
  init_options = { status = true },
  flags = { debounce_text_changes = 0 },
  handlers = {
    ["sparwright/status"] = function(_, status)
      if status.state ~= "working" then settled = status.version end
    end,
  },
  on_error = function(code) fail("client error " .. code) end,
})
if not client then fail("the server did not start") end
vim.lsp.buf_attach_client(buffer, client)

local function wait(what, condition)
  if not vim.wait(20000, condition, 20) then fail("waited for " .. what) end
end

local function diagnostics()
  local list = {}
  for _, each in ipairs(vim.diagnostic.get(buffer)) do
    local line = vim.api.nvim_buf_get_lines(buffer, each.lnum, each.lnum + 1, false)[1] or ""
    local _, character = vim.str_utfindex(line, math.min(each.col, #line))
    table.insert(list, { line = each.lnum, character = character, severity = each.severity, message = each.message })
  end
  return list
end

local function request(method, params)
  local answers, problem = vim.lsp.buf_request_sync(buffer, method, params, 20000)
  if problem then fail(method .. ": " .. problem) end
  return answers[client] and answers[client].result
end

wait("the first figures", function() return settled ~= nil end)
local seen = { opened = diagnostics() }

local text = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), "\n")
local from, to = text:find(ask.edit.from, 1, true)
if not from then fail("no " .. ask.edit.from .. " in the text") end
local row = select(2, text:sub(1, from):gsub("\n", ""))
local column = from - 1 - (text:sub(1, from - 1):match(".*()\n") or 0)
vim.api.nvim_buf_set_text(buffer, row, column, row, column + (to - from + 1), { ask.edit.to })
wait("the figures after the edit", function() return settled == vim.lsp.util.buf_versions[buffer] end)
seen.edited = diagnostics()

local hover = request("textDocument/hover", { textDocument = { uri = vim.uri_from_bufnr(buffer) }, position = ask.hover })
seen.hover = hover and hover.contents and (hover.contents.value or hover.contents) or ""

local edits = request("textDocument/formatting", {
  textDocument = { uri = vim.uri_from_bufnr(buffer) }, options = { tabSize = 2, insertSpaces = true },
})
if edits then vim.lsp.util.apply_text_edits(edits, buffer, "utf-16") end
seen.formatted = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), "\n") .. "\n"

vim.fn.writefile({ vim.fn.json_encode(seen) }, ask.out)
vim.cmd("qa!")
