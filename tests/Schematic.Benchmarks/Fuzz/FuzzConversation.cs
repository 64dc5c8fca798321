using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Schematic.Cli.LanguageServer;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>
/// Messages of the protocol with words, numbers and characters changed, each with a header that is right. Every answer is JSON, none
/// tells of a slip of the program, and whatever came before, the end is still answered.
/// </summary>
internal sealed class FuzzConversation(FuzzCorpus corpus)
{
    private const int MostMessages = 12;
    private const int LastId = 987_654;
    private const string Uri = "file:///nowhere/fuzz.panel";

    private static readonly string[] Methods =
    [
        "initialize", "initialized", "shutdown", "textDocument/didOpen", "textDocument/didChange", "textDocument/didSave", "textDocument/didClose",
        "workspace/didChangeWatchedFiles", "workspace/didChangeConfiguration", "$/setTrace", "$/cancelRequest", "textDocument/completion", "textDocument/hover",
        "textDocument/definition", "textDocument/references", "textDocument/documentHighlight", "textDocument/prepareRename", "textDocument/rename",
        "textDocument/formatting", "textDocument/foldingRange", "textDocument/documentSymbol", "textDocument/codeAction", "textDocument/nonsense", "",
    ];

    /// <summary>One conversation.</summary>
    public void Run(FuzzText text, int seed, Action<string> step)
    {
        step("conversation");
        RunAsync(text, new Random(seed)).GetAwaiter().GetResult();
    }

    private async Task RunAsync(FuzzText text, Random random)
    {
        Pipe requests = new(), answers = new(new PipeOptions(pauseWriterThreshold: 0));
        var server = LanguageConnection.Run(requests.Reader.AsStream(), answers.Writer.AsStream(), Timeout.InfiniteTimeSpan);
        await Send(requests.Writer, Encoding.UTF8.GetBytes(Message("textDocument/didOpen", random, text.Text)));
        for (var i = random.Next(MostMessages); i > 0; i--) await Send(requests.Writer, Changed(Message(Methods[random.Next(Methods.Length)], random, text.Text), random));
        await Send(requests.Writer, Encoding.UTF8.GetBytes($$"""{"jsonrpc":"2.0","id":{{LastId}},"method":"shutdown"}"""));
        var reader = answers.Reader.AsStream();
        while (!IsLast(await Read(reader)))
        {
        }

        await requests.Writer.CompleteAsync();
        await server;
    }

    private static bool IsLast(JsonObject answer)
    {
        var error = answer["error"] as JsonObject;
        var message = error?["message"]?.ToString() ?? "";
        if (message.Contains("could not be answered", StringComparison.Ordinal)) throw new FuzzException($"an answer tells of a slip: {message}");
        return answer["id"] is JsonValue id && id.TryGetValue<int>(out var number) && number == LastId;
    }

    /// <summary>A message as an editor would send it.</summary>
    private string Message(string method, Random random, string text)
    {
        var place = new { line = random.Next(40), character = random.Next(60) };
        var far = new { line = random.Next(40), character = random.Next(60) };
        var word = corpus.Tokens[random.Next(corpus.Tokens.Length)];
        var document = new { uri = Uri, version = random.Next(9), languageId = "panel", text };
        return JsonSerializer.Serialize(new
        {
            jsonrpc = "2.0",
            id = random.Next(1000),
            method,
            @params = new
            {
                textDocument = document, position = place, range = new { start = place, end = far }, newName = word, context = new { includeDeclaration = true },
                contentChanges = new object[] { new { range = new { start = place, end = far }, text = word } },
                capabilities = new { }, rootUri = (string?)null, processId = 1,
            },
        });
    }

    private static byte[] Changed(string message, Random random)
    {
        var parts = FuzzMutator.Cut(message);
        for (var i = random.Next(4); i > 0; i--)
        {
            var at = random.Next(parts.Count);
            switch (random.Next(8))
            {
                case 0: parts.RemoveAt(at); break;
                case 1: parts[at] = "null"; break;
                case 2: parts[at] = FuzzMutator.Number(random); break;
                case 3: parts[at] = JsonSerializer.Serialize(FuzzMutator.Oddity(random)); break;
                case 4: parts[at] = "{}"; break;
                case 5: parts[at] = "\"\\ud800\""; break;
                case 6: parts.Insert(at, parts[random.Next(parts.Count)]); break;
                default: parts[at] = "[" + parts[at] + "]"; break;
            }

            if (parts.Count == 0) break;
        }

        var bytes = Encoding.UTF8.GetBytes(string.Concat(parts));
        if (bytes.Length > 0 && random.Next(6) == 0) bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        return bytes;
    }

    private static async Task Send(PipeWriter writer, byte[] body)
    {
        await writer.WriteAsync(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n\r\n")));
        await writer.WriteAsync(body);
    }

    private static async Task<JsonObject> Read(Stream stream)
    {
        var header = new StringBuilder();
        var letter = new byte[1];
        while (header.Length < 4 || header.ToString(header.Length - 4, 4) != "\r\n\r\n")
        {
            if (await stream.ReadAsync(letter) == 0) throw new FuzzException("the server ended the conversation");
            header.Append((char)letter[0]);
        }

        var body = new byte[int.Parse(header.ToString().Split("Content-Length: ")[1].Split('\r')[0], CultureInfo.InvariantCulture)];
        await stream.ReadExactlyAsync(body);
        return JsonNode.Parse(body) as JsonObject ?? throw new FuzzException("an answer is no object");
    }
}
