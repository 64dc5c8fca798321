using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace Schematic.Cli.LanguageServer;

/// <summary>Speaks the protocol over two streams.</summary>
internal sealed class LanguageConnection : ILanguageClient
{
    private static readonly IReadOnlyDictionary<string, Type> PublishTypes = new Dictionary<string, Type>(StringComparer.Ordinal)
    {
        ["uri"] = typeof(string),
        ["version"] = typeof(int),
        ["diagnostics"] = typeof(ImmutableArray<LspDiagnostic>),
    };

    private readonly JsonRpc _rpc;

    private LanguageConnection(JsonRpc rpc) => _rpc = rpc;

    /// <summary>
    /// Answers until the editor asks for the end or goes away. Gives the exit code that the protocol asks for: 0 where the editor had
    /// said that it was done, 1 otherwise.
    /// </summary>
    public static async Task<int> Run(Stream input, Stream output, TimeSpan restBeforeProof)
    {
        using var rpc = new Conversation(new MessageHandler(output, input, Formatter()));
        var session = new LanguageSession(new LanguageConnection(rpc), restBeforeProof);
        rpc.AddLocalRpcTarget(RpcTargetMetadata.FromShape<ILanguageServer>(), session, null);
        rpc.StartListening();
        await Task.WhenAny(rpc.Completion, session.Ended).ConfigureAwait(false);
        return session.IsShutDown ? ExitCode.Clean : ExitCode.Findings;
    }

    /// <inheritdoc/>
    public void Publish(string uri, int? version, ImmutableArray<LspDiagnostic> diagnostics)
    {
        var parameters = new Dictionary<string, object?>(StringComparer.Ordinal) { ["uri"] = uri, ["diagnostics"] = diagnostics };
        if (version is { } number) parameters["version"] = number;
        _ = Send(parameters);
    }

    private async Task Send(Dictionary<string, object?> parameters)
    {
        try
        {
            await _rpc.NotifyWithParameterObjectAsync("textDocument/publishDiagnostics", parameters, PublishTypes).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is ConnectionLostException or ObjectDisposedException or IOException)
        {
            // The editor went away: nobody is left to be told.
        }
    }

    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "Every type that is written or read is in ProtocolJson; .ci/run asks all that an editor asks of the program compiled ahead of time.")]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "As above: the formatter asks ProtocolJson and makes no code at run time.")]
    private static SystemTextJsonFormatter Formatter()
    {
        var formatter = new SystemTextJsonFormatter();
        formatter.JsonSerializerOptions.TypeInfoResolver = ProtocolJson.Default;
        formatter.JsonSerializerOptions.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        formatter.JsonSerializerOptions.RespectNullableAnnotations = true;
        formatter.JsonSerializerOptions.RespectRequiredConstructorParameters = true;
        formatter.JsonSerializerOptions.DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull;
        return formatter;
    }

    /// <summary>Tells a slip of the program in one sentence and goes on with the next message.</summary>
    private sealed class Conversation(IJsonRpcMessageHandler handler) : JsonRpc(handler)
    {
        protected override JsonRpcError.ErrorDetail CreateErrorDetails(JsonRpcRequest request, Exception exception) =>
            exception switch
            {
                LocalRpcException or OperationCanceledException => base.CreateErrorDetails(request, exception),
                JsonException or InvalidOperationException { Source: "System.Text.Json" or "System.Text.Json.Rethrowable" } => new JsonRpcError.ErrorDetail
                {
                    Code = JsonRpcErrorCode.InvalidParams,
                    Message = $"The content of this message is not as the protocol has it: {exception.Message}",
                },
                _ => new JsonRpcError.ErrorDetail
                {
                    Code = JsonRpcErrorCode.InternalError,
                    Message = $"This could not be answered: {exception.Message} ({exception.GetType().Name})",
                },
            };
    }

    /// <summary>Passes over a message that is no JSON, or none of JSON-RPC: the next begins where its header says, so nothing else is lost.</summary>
    private sealed class MessageHandler(Stream output, Stream input, IJsonRpcMessageFormatter formatter)
        : HeaderDelimitedMessageHandler(output, input, formatter)
    {
        /// <summary>What a message that names no method is taken to name, so that it is answered as one that is not known.</summary>
        private const string NoMethod = "(none)";

        protected override async ValueTask<JsonRpcMessage?> ReadCoreAsync(CancellationToken cancellationToken)
        {
            while (true)
            {
                try
                {
                    var message = await base.ReadCoreAsync(cancellationToken).ConfigureAwait(false);
                    if (message is JsonRpcRequest { Method: null or "" } request) request.Method = NoMethod;
                    return message;
                }
                catch (JsonException)
                {
                    await Refuse(JsonRpcErrorCode.ParseError, "This message is no JSON, or none of JSON-RPC.", cancellationToken).ConfigureAwait(false);
                }
                catch (Exception failure) when (failure is UnrecognizedJsonRpcMessageException or (InvalidOperationException and not ObjectDisposedException))
                {
                    // The reader of messages says so of a field of another kind and of text that is no UTF-8.
                    await Refuse(JsonRpcErrorCode.InvalidRequest, "This message is none of JSON-RPC.", cancellationToken).ConfigureAwait(false);
                }
            }
        }

        private ValueTask Refuse(JsonRpcErrorCode code, string sentence, CancellationToken cancellationToken) =>
            WriteAsync(new JsonRpcError { RequestId = RequestId.Null, Error = new JsonRpcError.ErrorDetail { Code = code, Message = sentence } }, cancellationToken);
    }
}
