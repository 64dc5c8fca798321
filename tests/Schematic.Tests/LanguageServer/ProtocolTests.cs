using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Schematic.Cli.LanguageServer;
using Xunit;

namespace Schematic.Tests.LanguageServer;

/// <summary>
/// Messages as the specification of the Language Server Protocol 3.17 shows them ("Base protocol", "initialize", "textDocument/...";
/// written down from memory), answered as it says.
/// </summary>
public class ProtocolTests
{
    /// <summary>The example of the section "Example" of the base protocol: a request whose method is not known gets its error back.</summary>
    [Fact]
    public async Task An_unknown_method_is_answered_with_method_not_found()
    {
        using var editor = new RawEditor();
        editor.Send("""{"jsonrpc":"2.0","id":1,"method":"textDocument/nonsense","params":{}}""");
        var answer = await editor.Next();
        Assert.Equal(-32601, answer["error"]!["code"]!.GetValue<int>());
        Assert.Equal(1, answer["id"]!.GetValue<int>());
    }

    /// <summary>Header fields end with a carriage return and a line feed; Content-Type may stand beside Content-Length.</summary>
    [Fact]
    public async Task A_header_may_name_the_content_type()
    {
        using var editor = new RawEditor();
        const string body = """{"jsonrpc":"2.0","id":"a","method":"shutdown"}""";
        editor.Write($"Content-Length: {body.Length}\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n{body}");
        var answer = await editor.Next();
        Assert.Equal("a", answer["id"]!.GetValue<string>());
        Assert.True(answer.ContainsKey("result"));
        Assert.Null(answer["result"]);
    }

    [Fact]
    public async Task Initialize_says_how_texts_are_kept_and_what_is_answered()
    {
        using var editor = new RawEditor();
        editor.Send("""
            {"jsonrpc":"2.0","id":0,"method":"initialize","params":{"processId":12,"clientInfo":{"name":"editor"},"locale":"en",
            "rootPath":null,"rootUri":null,"capabilities":{"general":{"positionEncodings":["utf-8","utf-16"]}},"trace":"off","workspaceFolders":null}}
            """);
        var told = (await editor.Next())["result"]!["capabilities"]!;
        Assert.Equal("utf-16", told["positionEncoding"]!.GetValue<string>());
        Assert.Equal(2, told["textDocumentSync"]!["change"]!.GetValue<int>());
        foreach (var can in new[] { "hoverProvider", "definitionProvider", "referencesProvider", "documentFormattingProvider", "foldingRangeProvider", "documentSymbolProvider" })
            Assert.True(told[can]!.GetValue<bool>(), can);
    }

    /// <summary>The example of "Text Documents": in a𐐀b the b stands at character 3, for 𐐀 takes two UTF-16 units.</summary>
    [Fact]
    public async Task Characters_are_counted_in_units_of_utf_16()
    {
        using var editor = new RawEditor();
        editor.Open("file:///desk.panel", "title \"a𐐀b\"\nlmap DS1 24 V # 𐐀\n");
        Assert.Equal("lmap", (await editor.Findings())[0]!["message"]!.GetValue<string>().Split('`')[1]);
        editor.Change("file:///desk.panel", 2, (0, 10, 0, 11), "c\" number \"1");
        Assert.Equal("unknown-statement", (await editor.Findings())[0]!["code"]!.GetValue<string>());
        editor.Send("""{"jsonrpc":"2.0","id":5,"method":"textDocument/documentSymbol","params":{"textDocument":{"uri":"file:///desk.panel"}}}""");
        var start = (await editor.Answer(5))["result"]![0]!["selectionRange"]!["start"]!;
        Assert.Equal((1, 5), (start["line"]!.GetValue<int>(), start["character"]!.GetValue<int>()));
    }

    [Theory]
    [InlineData("""{"jsonrpc":"2.0","id":9,"method":""")]
    [InlineData("[1,2")]
    [InlineData("no json at all")]
    public async Task A_message_that_is_no_json_is_answered_with_a_parse_error_and_the_next_is_read(string body)
    {
        using var editor = new RawEditor();
        editor.Send(body);
        Assert.Equal(-32700, (await editor.Next())["error"]!["code"]!.GetValue<int>());
        editor.Send("""{"jsonrpc":"2.0","id":2,"method":"shutdown"}""");
        Assert.Equal(2, (await editor.Next())["id"]!.GetValue<int>());
    }

    // JSON-RPC 2.0, section 5.1: -32600 for what is no valid request; our reader of messages takes some of it for no JSON, -32700, and no method for an unknown one, -32601.
    [Theory]
    [InlineData("""{"jsonrpc":["2.0"],"id":1,"method":"shutdown"}""", -32600)]
    [InlineData("""{"jsonrpc":"2.0","id":1,"method":7}""", -32600)]
    [InlineData("""{"jsonrpc":"2.0","id":1,"method":null}""", -32601)]
    [InlineData("""{"jsonrpc":"2.0","id":1,"method":""}""", -32601)]
    [InlineData("""{"jsonrpc":"2.0","id":"\ud800","method":"shutdown"}""", -32700)]
    [InlineData("{}", -32700)]
    public async Task A_message_that_is_none_of_the_protocol_is_refused_and_the_next_is_read(string body, int code)
    {
        using var editor = new RawEditor();
        editor.Send(body);
        Assert.Equal(code, (await editor.Next())["error"]!["code"]!.GetValue<int>());
        editor.Send("""{"jsonrpc":"2.0","id":2,"method":"shutdown"}""");
        Assert.Equal(2, (await editor.Next())["id"]!.GetValue<int>());
    }

    // JSON-RPC 2.0, section 5.1: -32602, "Invalid method parameter(s)": no slip of the server.
    [Theory]
    [InlineData("textDocument/hover", """{"textDocument":7,"position":{"line":0,"character":0}}""")]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":null},"position":{"line":0,"character":0}}""")]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"a"},"position":{"line":0.5,"character":0}}""")]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"a"}}""")]
    [InlineData("textDocument/hover", """{"textDocument":{"uri":"\ud800"},"position":{"line":0,"character":0}}""")]
    [InlineData("textDocument/didOpen", """{"textDocument":{"uri":"a"}}""")]
    [InlineData("textDocument/didChange", """{"textDocument":{"uri":"a"}}""")]
    public async Task Content_of_the_wrong_kind_is_told_as_such(string method, string parameters)
    {
        using var editor = new RawEditor();
        editor.Send($$"""{"jsonrpc":"2.0","id":1,"method":"{{method}}","params":{{parameters}}}""");
        Assert.Equal(-32602, (await editor.Next())["error"]!["code"]!.GetValue<int>());
    }

    [Fact]
    public async Task Characters_that_steer_are_written_out_in_the_outline()
    {
        using var editor = new RawEditor();
        editor.Open("file:///desk.panel", "lamp DS1 \"a\u202eb\" 24 V\n");
        editor.Send("""{"jsonrpc":"2.0","id":5,"method":"textDocument/documentSymbol","params":{"textDocument":{"uri":"file:///desk.panel"}}}""");
        Assert.Equal("lamp, a<U+202E>b", (await editor.Answer(5))["result"]![0]!["detail"]!.GetValue<string>());
    }

    [Fact]
    public async Task A_change_that_is_none_is_passed_over()
    {
        using var editor = new RawEditor();
        editor.Open("file:///desk.panel", "lmap DS1\n");
        editor.Send("""{"jsonrpc":"2.0","id":7,"method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///desk.panel","version":2},"contentChanges":[null]}}""");
        Assert.True((await editor.Answer(7)).ContainsKey("result"));
    }

    [Theory]
    [InlineData("""{"textDocument":{"uri":"file:///nowhere.panel"},"position":{"line":0,"character":0}}""")]
    [InlineData("""{"textDocument":null,"position":{"line":-5,"character":0}}""")]
    [InlineData("{}")]
    public async Task A_question_about_what_is_not_there_is_an_error_and_not_the_end(string parameters)
    {
        using var editor = new RawEditor();
        editor.Send($$"""{"jsonrpc":"2.0","id":1,"method":"textDocument/hover","params":{{parameters}}}""");
        Assert.NotNull((await editor.Next())["error"]);
        editor.Send("""{"jsonrpc":"2.0","id":2,"method":"shutdown"}""");
        Assert.Equal(2, (await editor.Next())["id"]!.GetValue<int>());
    }

    // As notifications nobody would hear that they failed, and a used file that was changed on the disk would not be read again.
    [Theory]
    [InlineData("initialized", """{"more":1}""")]
    [InlineData("workspace/didChangeWatchedFiles", """{"changes":[{"uri":"file:///desk/unit.panel","type":2}]}""")]
    [InlineData("workspace/didChangeConfiguration", """{"settings":null}""")]
    [InlineData("$/setTrace", """{"value":"off"}""")]
    public async Task What_is_not_looked_at_in_a_message_does_not_hinder_it(string method, string parameters)
    {
        using var editor = new RawEditor();
        editor.Send($$"""{"jsonrpc":"2.0","id":1,"method":"{{method}}","params":{{parameters}}}""");
        var answer = await editor.Next();
        Assert.True(answer.ContainsKey("result"), answer.ToJsonString());
    }

    [Fact]
    public async Task A_header_without_a_length_ends_the_conversation()
    {
        using var editor = new RawEditor();
        editor.Write("Hello: there\r\n\r\n{}");
        Assert.Equal(1, await editor.Ended());
    }

    /// <summary>"The server should exit with success code 0 if the shutdown request has been received before; otherwise with error code 1."</summary>
    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 1)]
    public async Task The_exit_code_tells_whether_the_end_was_announced(bool announced, int code)
    {
        using var editor = new RawEditor();
        if (announced)
        {
            editor.Send("""{"jsonrpc":"2.0","id":1,"method":"shutdown"}""");
            await editor.Next();
        }

        editor.Send("""{"jsonrpc":"2.0","method":"exit"}""");
        Assert.Equal(code, await editor.Ended());
    }

    /// <summary>An editor that writes its messages by hand, over pipes.</summary>
    private sealed class RawEditor : IDisposable
    {
        private readonly Pipe _in = new();
        private readonly Pipe _out = new();
        private readonly Task<int> _server;
        private readonly Stream _answers;
        private readonly CancellationTokenSource _patience = new(TimeSpan.FromSeconds(100));

        public RawEditor()
        {
            _answers = _out.Reader.AsStream();
            _server = LanguageConnection.Run(_in.Reader.AsStream(), _out.Writer.AsStream(), TimeSpan.FromMinutes(10));
        }

        public void Send(string body) => Write(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {Encoding.UTF8.GetByteCount(body)}\r\n\r\n{body}"));

        public void Write(string text) => _in.Writer.WriteAsync(Encoding.UTF8.GetBytes(text), _patience.Token).AsTask().Wait();

        public void Open(string uri, string text) => Send(JsonSerializer.Serialize(new
        {
            jsonrpc = "2.0", method = "textDocument/didOpen", @params = new { textDocument = new { uri, languageId = "panel", version = 1, text } },
        }));

        public void Change(string uri, int version, (int FromLine, int From, int ToLine, int To) at, string text) => Send(JsonSerializer.Serialize(new
        {
            jsonrpc = "2.0", method = "textDocument/didChange",
            @params = new
            {
                textDocument = new { uri, version },
                contentChanges = new[]
                {
                    new { range = new { start = new { line = at.FromLine, character = at.From }, end = new { line = at.ToLine, character = at.To } }, text },
                },
            },
        }));

        public async Task<JsonObject> Next()
        {
            var header = "";
            var letter = new byte[1];
            while (!header.EndsWith("\r\n\r\n", StringComparison.Ordinal))
            {
                await _answers.ReadExactlyAsync(letter, _patience.Token);
                header += (char)letter[0];
            }

            var body = new byte[int.Parse(header.Split("Content-Length: ")[1].Split('\r')[0], CultureInfo.InvariantCulture)];
            await _answers.ReadExactlyAsync(body, _patience.Token);
            return JsonNode.Parse(body)!.AsObject();
        }

        public async Task<JsonArray> Findings()
        {
            while (true)
            {
                var message = await Next();
                if (message["method"]?.GetValue<string>() == "textDocument/publishDiagnostics") return message["params"]!["diagnostics"]!.AsArray();
            }
        }

        public async Task<JsonObject> Answer(int id)
        {
            while (true)
            {
                var message = await Next();
                if (message["id"]?.GetValue<int>() == id) return message;
            }
        }

        public Task<int> Ended() => _server.WaitAsync(_patience.Token);

        public void Dispose()
        {
            _in.Writer.Complete();
            _patience.Dispose();
        }
    }
}
