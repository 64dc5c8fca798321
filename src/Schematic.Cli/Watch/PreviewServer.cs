using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Text;

namespace Schematic.Cli.Watch;

/// <summary>
/// Serves the preview on the loopback address, to whoever knows the token in the address and comes from that very address: a page of
/// another site, or a name that was made to lead here, gets nothing. It gives no file of the disk: there is a page and its news.
/// </summary>
internal sealed class PreviewServer : IDisposable
{
    private const int TokenBytes = 24;
    private const int Attempts = 20;
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(25);

    private readonly HttpListener _listener;
    private readonly PreviewBoard _board;
    private readonly CancellationTokenSource _end = new();
    private readonly string _token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(TokenBytes));
    private readonly int _port;

    private PreviewServer(HttpListener listener, int port, PreviewBoard board)
    {
        _listener = listener;
        _port = port;
        _board = board;
    }

    /// <summary>The address of the page, token included.</summary>
    public string Address => $"http://127.0.0.1:{Text(_port)}/{_token}/";

    /// <summary>Starts on a port, or on any that is free; null when it cannot be had.</summary>
    public static PreviewServer? Start(PreviewBoard board, int? port)
    {
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            var number = port ?? FreePort();
            var listener = new HttpListener();
            listener.Prefixes.Add($"http://127.0.0.1:{Text(number)}/");
            try
            {
                listener.Start();
                var server = new PreviewServer(listener, number, board);
                _ = server.Listen();
                return server;
            }
            catch (HttpListenerException)
            {
                listener.Close();
                if (port is not null) return null;
            }
        }

        return null;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _end.Cancel();
        _listener.Close();
        _end.Dispose();
    }

    private static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }

    private async Task Listen()
    {
        while (!_end.IsCancellationRequested)
        {
            HttpListenerContext context;
            try
            {
                context = await _listener.GetContextAsync().ConfigureAwait(false);
            }
            catch (Exception failure) when (failure is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                return;
            }

            _ = Answer(context);
        }
    }

    private async Task Answer(HttpListenerContext context)
    {
        try
        {
            await Answer(context.Request, context.Response).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is HttpListenerException or ObjectDisposedException or IOException or OperationCanceledException or InvalidOperationException)
        {
            // The browser went away, or the program ends: nobody is left to be answered.
            context.Response.Abort();
        }
    }

    private async Task Answer(HttpListenerRequest request, HttpListenerResponse response)
    {
        response.Headers["Cache-Control"] = "no-store";
        response.Headers["Referrer-Policy"] = "no-referrer";
        response.Headers["X-Content-Type-Options"] = "nosniff";
        response.Headers["Cross-Origin-Resource-Policy"] = "same-origin";
        response.Headers["Content-Security-Policy"] = "frame-ancestors 'none'";
        response.KeepAlive = true;
        if (!ComesFromHere(request)) await Send(response, HttpStatusCode.Forbidden, "text/plain", "Not from here.\n"u8.ToArray()).ConfigureAwait(false);
        else if (PathOf(request) is not { } path) await Send(response, HttpStatusCode.NotFound, "text/plain", "There is nothing here.\n"u8.ToArray()).ConfigureAwait(false);
        else if (request.HttpMethod != "GET") await Send(response, HttpStatusCode.MethodNotAllowed, "text/plain", "Only asking is possible.\n"u8.ToArray()).ConfigureAwait(false);
        else if (path.Length == 0) await Send(response, HttpStatusCode.OK, "text/html", Encoding.UTF8.GetBytes(PageOf(_board.Current))).ConfigureAwait(false);
        else if (path == "news") await SendNews(request, response).ConfigureAwait(false);
        else await Send(response, HttpStatusCode.NotFound, "text/plain", "There is nothing here.\n"u8.ToArray()).ConfigureAwait(false);
    }

    /// <summary>
    /// Whether the browser speaks to this very address, and for a page of this very address: a foreign Host means that a name of
    /// somebody else was made to lead here, a foreign Origin that a page of somebody else asks.
    /// </summary>
    private bool ComesFromHere(HttpListenerRequest request)
    {
        var host = $"127.0.0.1:{Text(_port)}";
        return request.Headers.GetValues("Host") is [var named] && named == host
            && (request.Headers.GetValues("Origin") is not { } origins || origins is [var origin] && origin == $"http://{host}")
            && request.Headers["Sec-Fetch-Site"] is null or "none" or "same-origin";
    }

    /// <summary>What stands behind the token, without its query; null where the token is missing or wrong. Nothing is unescaped.</summary>
    private string? PathOf(HttpListenerRequest request)
    {
        var raw = (request.RawUrl ?? "").Split('?')[0];
        var prefix = $"/{_token}/";
        return raw.Length >= prefix.Length
            && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(raw[..prefix.Length]), Encoding.UTF8.GetBytes(prefix))
            ? raw[prefix.Length..]
            : null;
    }

    private async Task SendNews(HttpListenerRequest request, HttpListenerResponse response)
    {
        var (after, drawing) = (NumberOf(request, "after"), NumberOf(request, "drawing"));
        var preview = await _board.After(after, LongestWait, _end.Token).ConfigureAwait(false);
        if (preview is null) await Send(response, HttpStatusCode.NoContent, "application/json", []).ConfigureAwait(false);
        else await Send(response, HttpStatusCode.OK, "application/json", PreviewNews.Write(preview, drawing)).ConfigureAwait(false);
    }

    private static int NumberOf(HttpListenerRequest request, string name) =>
        int.TryParse(request.QueryString[name], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private static async Task Send(HttpListenerResponse response, HttpStatusCode status, string type, byte[] body)
    {
        response.StatusCode = (int)status;
        if (status != HttpStatusCode.NoContent)
        {
            response.ContentType = $"{type}; charset=utf-8";
            response.ContentLength64 = body.Length;
            await response.OutputStream.WriteAsync(body).ConfigureAwait(false);
        }

        response.Close();
    }

    private static string PageOf(Preview preview) => preview.Page ?? EmptyPage.Text;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
