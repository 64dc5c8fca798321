using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using Schematic.Cli;
using StreamJsonRpc;
using Xunit;

namespace Schematic.Tests.LanguageServer;

/// <summary>The built program, driven over its standard input and output by a client library (StreamJsonRpc) as an editor drives it.</summary>
public sealed class ClientTests : IAsyncLifetime, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("schematic-editor-").FullName;
    private readonly BlockingCollection<JsonElement> _findings = [];
    private Process _program = null!;
    private JsonRpc _client = null!;

    private string MainUri => new Uri(Path.Combine(_folder, "main.panel")).AbsoluteUri;

    private string UnitUri => new Uri(Path.Combine(_folder, "unit.panel")).AbsoluteUri;

    public async Task InitializeAsync()
    {
        File.WriteAllText(Path.Combine(_folder, "unit.panel"), "connector J1 { pins ; solder ; strip 2 pitch 5 mm }\nlamp DS1 24 V 40 mA { J1:1 J1:2 }\n");
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
        };
        foreach (var argument in new[] { "exec", typeof(CliApplication).Assembly.Location, "language-server", "--rest", "0" }) start.ArgumentList.Add(argument);
        _program = Process.Start(start)!;
        var formatter = new SystemTextJsonFormatter();
        _client = new JsonRpc(new HeaderDelimitedMessageHandler(_program.StandardInput.BaseStream, _program.StandardOutput.BaseStream, formatter));
        _client.AddLocalRpcMethod("textDocument/publishDiagnostics", (JsonElement uri, JsonElement diagnostics, JsonElement version) =>
            _findings.Add(JsonSerializer.SerializeToElement(new { uri, diagnostics })));
        _client.StartListening();
        var folder = new Uri(_folder).AbsoluteUri;
        await Ask("initialize", new { processId = Environment.ProcessId, rootUri = folder, capabilities = new { }, workspaceFolders = new[] { new { uri = folder, name = "desk" } } });
        await Tell("initialized", new { });
    }

    public async Task DisposeAsync()
    {
        await _client.InvokeAsync("shutdown");
        await _client.NotifyAsync("exit");
        Assert.True(_program.WaitForExit(60_000));
        Assert.Equal(0, _program.ExitCode);
        Directory.Delete(_folder, recursive: true);
    }

    public void Dispose()
    {
        _client.Dispose();
        _program.Dispose();
        _findings.Dispose();
    }

    /// <summary>One conversation, for a program takes a while to start: squiggle, quick fix, proof, completion, hover, rename, format.</summary>
    [Fact]
    public async Task An_editor_is_answered_from_the_first_key_to_the_last()
    {
        const string text = "use \"unit.panel\" as UNIT\nconnector P1 \"plug\" { sockets ; mates UNIT.J1 ; solder }\nsuply PS1 24 V limit 1 A { + - }\nwire W1 22 AWG red 300 mm PS1:+ -> P1:1\nwire W2 22 AWG black 300 mm PS1:- -> P1:1\n";
        await Open(MainUri, text);
        var misspelt = await FindingsOf(MainUri, f => f.Contains("suply", StringComparison.Ordinal));
        Assert.Equal("unknown-statement", misspelt[0]!["code"]!.GetValue<string>());

        var actions = await Ask("textDocument/codeAction", new { textDocument = new { uri = MainUri }, range = Range(2, 0, 2, 5), context = new { diagnostics = Array.Empty<object>() } });
        var action = Assert.Single(actions!.AsArray(), a => a!["title"]!.GetValue<string>() == "Write `supply`")!;
        Assert.True(action["isPreferred"]!.GetValue<bool>());
        Assert.Equal("supply", action["edit"]!["changes"]![MainUri]![0]!["newText"]!.GetValue<string>());

        await Change(MainUri, 2, (2, 0, 2, 5), "supply");
        await FindingsOf(MainUri, f => f.Contains("two-wires-in-contact", StringComparison.Ordinal) || f.Contains("supply-shorted", StringComparison.Ordinal));
        await Change(MainUri, 3, (4, 40, 4, 41), "2");
        await FindingsOf(MainUri, f => !f.Contains("\"severity\":1", StringComparison.Ordinal));

        var items = await Ask("textDocument/completion", At(MainUri, 3, 38));
        Assert.Contains(items!["items"]!.AsArray(), i => i!["label"]!.GetValue<string>() == "2" && i["detail"]!.GetValue<string>().StartsWith("W2", StringComparison.Ordinal));
        var hover = await Ask("textDocument/hover", At(MainUri, 3, 38));
        Assert.Contains("meets `UNIT.J1:1`", hover!["contents"]!["value"]!.GetValue<string>(), StringComparison.Ordinal);

        var defined = await Ask("textDocument/definition", At(MainUri, 1, 44));
        Assert.Equal(UnitUri, defined![0]!["uri"]!.GetValue<string>());
        await Open(UnitUri, File.ReadAllText(Path.Combine(_folder, "unit.panel")));
        var renamed = await Ask("textDocument/rename", new { textDocument = new { uri = UnitUri }, position = new { line = 0, character = 11 }, newName = "J7" });
        Assert.Equal([MainUri, UnitUri], renamed!["changes"]!.AsObject().Select(c => c.Key).Order(StringComparer.Ordinal));
        var taken = await Assert.ThrowsAsync<RemoteInvocationException>(() =>
            Ask("textDocument/rename", new { textDocument = new { uri = UnitUri }, position = new { line = 0, character = 11 }, newName = "DS1" }));
        Assert.Contains("taken", taken.Message, StringComparison.Ordinal);

        await Change(MainUri, 4, (0, 0, 0, 0), "title   \"Desk\"\n");
        var edits = await Ask("textDocument/formatting", new { textDocument = new { uri = MainUri }, options = new { tabSize = 2, insertSpaces = true } });
        Assert.NotEmpty(edits!.AsArray());
        Assert.Equal(5, (await Ask("textDocument/documentSymbol", new { textDocument = new { uri = MainUri } }))!.AsArray().Count);
        Assert.NotEmpty((await Ask("textDocument/references", new { textDocument = new { uri = MainUri }, position = new { line = 4, character = 28 }, context = new { includeDeclaration = true } }))!.AsArray());
        Assert.NotEmpty((await Ask("textDocument/documentHighlight", At(MainUri, 4, 28)))!.AsArray());
        Assert.NotNull(await Ask("textDocument/prepareRename", At(MainUri, 4, 28)));
        Assert.Empty((await Ask("textDocument/foldingRange", new { textDocument = new { uri = MainUri } }))!.AsArray());
        await Tell("textDocument/didSave", new { textDocument = new { uri = MainUri } });
        await Tell("workspace/didChangeWatchedFiles", new { changes = Array.Empty<object>() });
        await Tell("textDocument/didClose", new { textDocument = new { uri = MainUri } });
        await FindingsOf(MainUri, f => f == "[]");
    }

    private Task<JsonNode?> Ask(string method, object parameters) => _client.InvokeWithParameterObjectAsync<JsonNode?>(method, parameters);

    private Task Tell(string method, object parameters) => _client.NotifyWithParameterObjectAsync(method, parameters);

    private Task Open(string uri, string text) => Tell("textDocument/didOpen", new { textDocument = new { uri, languageId = "panel", version = 1, text } });

    private Task Change(string uri, int version, (int FromLine, int From, int ToLine, int To) at, string text) => Tell("textDocument/didChange", new
    {
        textDocument = new { uri, version },
        contentChanges = new[] { new { range = Range(at.FromLine, at.From, at.ToLine, at.To), text } },
    });

    private static object At(string uri, int line, int character) => new { textDocument = new { uri }, position = new { line, character } };

    private static object Range(int fromLine, int from, int toLine, int to) => new { start = new { line = fromLine, character = from }, end = new { line = toLine, character = to } };

    /// <summary>The first findings of a file that are as awaited; those told before are passed over.</summary>
    private async Task<JsonArray> FindingsOf(string uri, Func<string, bool> isAwaited)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(100));
        return await Task.Run(() =>
        {
            foreach (var told in _findings.GetConsumingEnumerable(patience.Token))
            {
                var text = told.GetProperty("diagnostics").GetRawText();
                if (told.GetProperty("uri").GetString() == uri && isAwaited(text)) return JsonNode.Parse(text)!.AsArray();
            }

            throw new InvalidOperationException("The program told nothing more.");
        });
    }
}
