using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Schematic.Cli;
using Schematic.Cli.Watch;
using Xunit;

namespace Schematic.Tests.Cli;

/// <summary>The preview: what it shows while a file is written, and that nobody else gets at it.</summary>
public sealed class WatchTests : IDisposable
{
    private readonly CliRun _run = new();
    private readonly PreviewBoard _board = new();

    public void Dispose() => _run.Dispose();

    private string PathOf(string name) => Path.Combine(_run.Folder, name);

    [Fact]
    public void A_broken_file_keeps_the_last_good_drawing_beside_its_findings()
    {
        _run.Write("desk.panel", CliRun.CleanPanel);
        var maker = new PreviewMaker(PathOf("desk.panel"), allowOutside: false, acceptsUnproved: false);
        var (good, _) = maker.Next(Preview.Nothing);
        Assert.Contains("<svg", good.Page, StringComparison.Ordinal);
        Assert.False(good.IsStale);

        _run.Write("desk.panel", CliRun.CleanPanel + "lmap DS1 24 V\n");
        var (broken, _) = maker.Next(good);
        Assert.Equal(good.Page, broken.Page);
        Assert.True(broken.IsStale);
        var news = JsonDocument.Parse(PreviewNews.Write(broken, broken.Drawing)).RootElement;
        Assert.Equal(JsonValueKind.Null, news.GetProperty("page").ValueKind);
        Assert.EndsWith("the drawing shows the file as it was before", news.GetProperty("summary").GetString(), StringComparison.Ordinal);
        var told = news.GetProperty("findings")[0];
        Assert.Equal("desk.panel:6:1", told.GetProperty("place").GetString());
        Assert.Equal(("lmap DS1 24 V", "^^^^"), (told.GetProperty("line").GetString(), told.GetProperty("mark").GetString()));

        _run.Write("desk.panel", CliRun.CleanPanel.Replace("Desk", "Bench", StringComparison.Ordinal));
        var (mended, _) = maker.Next(broken);
        Assert.False(mended.IsStale);
        Assert.Contains("Bench", JsonDocument.Parse(PreviewNews.Write(mended, good.Drawing)).RootElement.GetProperty("page").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_goes_away_keeps_its_drawing_and_says_so()
    {
        _run.Write("desk.panel", CliRun.CleanPanel);
        var maker = new PreviewMaker(PathOf("desk.panel"), false, false);
        var (good, _) = maker.Next(Preview.Nothing);
        File.Delete(PathOf("desk.panel"));
        var (gone, _) = maker.Next(good);
        Assert.Equal(good.Page, gone.Page);
        Assert.Contains("cannot be read", gone.Trouble, StringComparison.Ordinal);
    }

    /// <summary>A save shows a first look at once; what comes of it when nobody saves is what a maker that knows nothing of before makes.</summary>
    [Fact]
    public void A_first_look_becomes_the_page_that_a_fresh_start_makes()
    {
        var text = File.ReadAllText(Repository.PathOf("examples/relay-latch/latch.panel"));
        _run.Write("latch.panel", text);
        var maker = new PreviewMaker(PathOf("latch.panel"), false, false);
        var (before, _) = maker.Next(Preview.Nothing);
        Assert.False(maker.IsDraft);

        _run.Write("latch.panel", text.Replace("Crossing bell", "Level crossing bell", StringComparison.Ordinal) + "note \"A note that takes a line more\"\n");
        var (look, _) = maker.Next(before);
        Assert.True(maker.IsDraft);
        Assert.Contains("Level crossing bell", look.Page, StringComparison.Ordinal);
        var whole = maker.Improved(look) ?? look;
        Assert.False(maker.IsDraft);
        Assert.Null(maker.Improved(whole));
        Assert.Equal(ContentOf(new PreviewMaker(PathOf("latch.panel"), false, false).Next(Preview.Nothing).Preview), ContentOf(whole));
    }

    /// <summary>All but the scripts, which know the number of the preview, and the policy that names them.</summary>
    private static string ContentOf(Preview preview) => preview.Page![preview.Page!.IndexOf("<body", StringComparison.Ordinal)..preview.Page!.IndexOf("<script>", StringComparison.Ordinal)];

    /// <summary>Saved in place, saved by a file beside it that is renamed, a used file changed, a used file that comes: all are seen.</summary>
    [Fact]
    public async Task Every_way_of_saving_is_seen()
    {
        _run.Write("desk.panel", CliRun.CleanPanel);
        using var end = new CancellationTokenSource();
        var loop = new PreviewLoop(new PreviewMaker(PathOf("desk.panel"), false, false), _board).Run(_ => { }, end.Token);
        var seen = await Next(0);

        _run.Write("desk.panel", CliRun.CleanPanel.Replace("Desk", "Bench", StringComparison.Ordinal));
        seen = await Next(seen.Version);
        Assert.Contains("Bench", seen.Page, StringComparison.Ordinal);

        _run.Write("desk.panel~", CliRun.CleanPanel + "use \"unit.panel\" as UNIT\n");
        File.Move(PathOf("desk.panel~"), PathOf("desk.panel"), overwrite: true);
        seen = await Next(seen.Version);
        Assert.Contains(seen.Findings, f => f.Rule == "missing-file");

        _run.Write("unit.panel", "lamp DS1 24 V\n");
        seen = await Next(seen.Version);
        Assert.DoesNotContain(seen.Findings, f => f.Rule == "missing-file");

        _run.Write("unit.panel", "lmap DS1 24 V 40 mA\n");
        seen = await Next(seen.Version);
        Assert.Contains(seen.Findings, f => f.Rule == "unknown-statement");
        await end.CancelAsync();
        await loop;
    }

    private async Task<Preview> Next(int version) => (await _board.After(version, TimeSpan.FromSeconds(100), CancellationToken.None))!;

    [Theory]
    [InlineData("Host", "evil.example")]
    [InlineData("Host", "127.0.0.1")]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "https://127.0.0.1:1")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task Who_comes_from_elsewhere_gets_nothing(string header, string value)
    {
        using var server = Served();
        var address = new Uri(server.Address);
        var host = header == "Host" ? value : address.Authority;
        var other = header == "Host" ? "" : $"{header}: {value}\r\n";
        var answer = await Raw(address, $"GET {address.AbsolutePath} HTTP/1.1\r\nHost: {host}\r\n{other}Connection: close\r\n\r\n");
        Assert.Matches("^HTTP/1.1 40[034] ", answer);
        Assert.DoesNotContain("<html", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_hosts_are_none()
    {
        using var server = Served();
        var address = new Uri(server.Address);
        var answer = await Raw(address, $"GET {address.AbsolutePath} HTTP/1.1\r\nHost: {address.Authority}\r\nHost: evil.example\r\nConnection: close\r\n\r\n");
        Assert.DoesNotContain("<html", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/news?after=0")]
    [InlineData("/{token}")]
    [InlineData("/{token}/desk.panel")]
    [InlineData("/{token}/../desk.panel")]
    [InlineData("/{token}/..%2fdesk.panel")]
    [InlineData("/{token}/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/{token}//etc/passwd")]
    [InlineData("/{token}/news/../../etc/passwd")]
    [InlineData("/{token}\\..\\desk.panel")]
    [InlineData("/{wrong}/")]
    [InlineData("/{half}/")]
    [InlineData("//{token}/")]
    [InlineData("http://evil.example/{token}/")]
    public async Task There_is_a_page_and_its_news_and_nothing_else(string target)
    {
        using var server = Served();
        var address = new Uri(server.Address);
        var token = address.AbsolutePath.Trim('/');
        target = target.Replace("{token}", token, StringComparison.Ordinal)
            .Replace("{wrong}", new string('0', token.Length), StringComparison.Ordinal).Replace("{half}", token[..(token.Length / 2)], StringComparison.Ordinal);
        var answer = await Raw(address, $"GET {target} HTTP/1.1\r\nHost: {address.Authority}\r\nConnection: close\r\n\r\n");
        Assert.Matches("^(HTTP/1.1 40[034] |$)", answer);
        Assert.DoesNotContain("terminals X1", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("POST")]
    [InlineData("PUT")]
    [InlineData("DELETE")]
    [InlineData("OPTIONS")]
    public async Task Nothing_can_be_done_but_to_ask(string method)
    {
        using var server = Served();
        using var client = new HttpClient();
        using var request = new HttpRequestMessage(new HttpMethod(method), server.Address);
        Assert.Equal(HttpStatusCode.MethodNotAllowed, (await client.SendAsync(request)).StatusCode);
    }

    [Fact]
    public async Task The_page_and_its_news_are_given_to_whoever_knows_the_token()
    {
        using var server = Served();
        using var client = new HttpClient();
        var page = await client.GetAsync(server.Address);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Equal("no-store", page.Headers.CacheControl!.ToString());
        Assert.Equal("no-referrer", page.Headers.GetValues("Referrer-Policy").Single());
        Assert.Equal("frame-ancestors 'none'", page.Headers.GetValues("Content-Security-Policy").Single());
        Assert.False(page.Headers.Contains("Access-Control-Allow-Origin"));
        var news = JsonDocument.Parse(await client.GetStringAsync(server.Address + "news?after=0&drawing=1")).RootElement;
        Assert.Equal(1, news.GetProperty("version").GetInt32());
    }

    /// <summary>Two servers never share a token, and it is long: 192 bits of chance.</summary>
    [Fact]
    public void The_token_is_another_each_time()
    {
        using var one = Served();
        using var other = Served();
        Assert.NotEqual(new Uri(one.Address).AbsolutePath, new Uri(other.Address).AbsolutePath);
        Assert.Equal(48, new Uri(one.Address).AbsolutePath.Trim('/').Length);
    }

    [Fact]
    public void Text_of_the_file_never_becomes_script()
    {
        const string attack = "</script><script>alert(1)</script><img src=x onerror=alert(2)>";
        var text = CliRun.CleanPanel.Replace("Desk", attack, StringComparison.Ordinal).Replace("desk plug", attack, StringComparison.Ordinal)
            + $"note \"{attack}\"\n";
        _run.Write("desk.panel", text);
        var maker = new PreviewMaker(PathOf("desk.panel"), false, false);
        var (good, _) = maker.Next(Preview.Nothing);
        Assert.DoesNotContain("<script>alert", good.Page, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", good.Page, StringComparison.Ordinal);
        _run.Write("desk.panel", text + $"lmap \"{attack}\"\n");
        var news = Encoding.UTF8.GetString(PreviewNews.Write(maker.Next(good).Preview, good.Drawing));
        Assert.DoesNotContain('<', news);
        Assert.Contains(attack, JsonDocument.Parse(news).RootElement.GetProperty("findings")[0].GetProperty("line").GetString(), StringComparison.Ordinal);
    }

    /// <summary>The script puts what comes into the page as text: it knows no way to read markup.</summary>
    [Fact]
    public void The_script_of_the_preview_reads_no_markup()
    {
        var script = PreviewScript.For(1);
        foreach (var word in new[] { "innerHTML", "outerHTML", "insertAdjacentHTML", "document.write", "eval(", "</" })
            Assert.DoesNotContain(word, script, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_told()
    {
        Assert.Equal(2, _run.Run("watch", "nowhere.panel"));
        Assert.Contains("nowhere.panel", _run.Error, StringComparison.Ordinal);
    }

    /// <summary>The built program serves, and ends with 0 when Ctrl-C is pressed.</summary>
    [Fact]
    public async Task Ctrl_C_ends_cleanly()
    {
        if (OperatingSystem.IsWindows()) return;
        _run.Write("desk.panel", CliRun.CleanPanel);
        using var program = Process.Start(new ProcessStartInfo("dotnet", ["exec", typeof(CliApplication).Assembly.Location, "watch", "desk.panel"])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = _run.Folder,
        })!;
        var address = (await program.StandardOutput.ReadLineAsync())!.Split(' ')[1];
        Assert.StartsWith("desk.panel: ", await program.StandardOutput.ReadLineAsync(), StringComparison.Ordinal);
        using (var client = new HttpClient()) Assert.Contains("<svg", await client.GetStringAsync(address), StringComparison.Ordinal);
        // Beside a shell (nohup, a job in the background) the interrupt is ignored by all children: there the other signal to end is sent.
        using (var signal = Process.Start("kill", [IsInterruptIgnored() ? "-TERM" : "-INT", program.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)])) await signal.WaitForExitAsync();
        await program.WaitForExitAsync();
        Assert.Equal(0, program.ExitCode);
    }

    private PreviewServer Served()
    {
        _run.Write("desk.panel", CliRun.CleanPanel);
        _board.Show(new Preview(1, 1, "<html><title>page</title></html>", [], null));
        return PreviewServer.Start(_board, null)!;
    }

    private static async Task<string> Raw(Uri address, string request)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(address.Host, address.Port);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync();
    }

    /// <summary>Whether this process, and so what it starts, ignores SIGINT: bit 1 of the mask that Linux tells.</summary>
    private static bool IsInterruptIgnored() => File.Exists("/proc/self/status")
        && File.ReadLines("/proc/self/status").First(l => l.StartsWith("SigIgn:", StringComparison.Ordinal)) is var line
        && (Convert.ToUInt64(line["SigIgn:".Length..].Trim(), 16) & 2) != 0;
}
