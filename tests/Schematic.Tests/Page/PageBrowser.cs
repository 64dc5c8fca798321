using System.Collections.Concurrent;
using System.Collections.Immutable;
using Microsoft.Playwright;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Page;
using Xunit;

namespace Schematic.Tests.Page;

/// <summary>One browser for the tests of a class; classes run beside each other, and each page is written once for all of them.</summary>
public sealed class PageBrowser : IAsyncLifetime
{
    public static readonly ImmutableArray<string> Examples =
    [
        "lever-frame/lever.panel", "relay-latch/latch.panel", "engine-order/engine-order.panel", "dsub-breakout/breakout.panel",
        "signal-lamp/signal-lamp.panel", "gate-desk/gate-desk.panel",
    ];

    /// <summary>How long a step in the browser may take on a machine that does much else: nothing is judged by it.</summary>
    public const int PatienceMs = 300_000;

    private static readonly ConcurrentDictionary<string, Lazy<string>> Pages = new();

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("schematic-page-");
    private IPlaywright? _playwright;
    private IBrowser? _browser;
    private int _files;

    public async Task InitializeAsync()
    {
        if (BrowserProgram.Path is null) return;
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = BrowserProgram.Path, Args = ["--no-sandbox"], Timeout = PatienceMs });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
        _folder.Delete(recursive: true);
    }

    public static Panel PanelOf(string example) => PanelLoader.LoadFile(Repository.PathOf("examples/" + example)).Panel;

    /// <summary>The page of an example, written once.</summary>
    public static string HtmlOf(string example) => Pages.GetOrAdd(example, e => new Lazy<string>(() =>
        PanelPage.Write(new PageRequest(PanelOf(e), []) { FileName = Path.GetFileName(e) }))).Value;

    public Task<OpenedPage> OpenExample(string example, BrowserNewContextOptions? options = null) => Open(HtmlOf(example), options);

    /// <summary>Opens the page of an address, in a context of its own.</summary>
    public async Task<OpenedPage> OpenAddress(string address)
    {
        var context = await _browser!.NewContextAsync();
        var page = new OpenedPage(await context.NewPageAsync());
        await page.Page.GotoAsync(address);
        return page;
    }

    /// <summary>Opens a page from a file, in a context of its own.</summary>
    public async Task<OpenedPage> Open(string html, BrowserNewContextOptions? options = null)
    {
        var file = Path.Combine(_folder.FullName, $"page-{Interlocked.Increment(ref _files)}.html");
        await File.WriteAllTextAsync(file, html);
        var context = await _browser!.NewContextAsync(options ?? new() { ViewportSize = new() { Width = 1300, Height = 900 } });
        var page = new OpenedPage(await context.NewPageAsync());
        await page.Page.GotoAsync("file://" + file);
        return page;
    }
}

/// <summary>A page in the browser, with everything that it complained about and asked for.</summary>
public sealed class OpenedPage : IAsyncDisposable
{
    private readonly ConcurrentQueue<string> _complaints = new();
    private readonly ConcurrentQueue<string> _requests = new();

    public OpenedPage(IPage page)
    {
        Page = page;
        page.SetDefaultTimeout(PageBrowser.PatienceMs);
        page.PageError += (_, error) => _complaints.Enqueue(error);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning") _complaints.Enqueue(message.Text);
        };
        page.Dialog += (_, dialog) => _complaints.Enqueue("dialog: " + dialog.Message);
        page.Request += (_, request) => _requests.Enqueue(request.Url);
    }

    public IPage Page { get; }

    /// <summary>Errors of scripts, what the console said, dialogs.</summary>
    public IReadOnlyCollection<string> Complaints => _complaints;

    /// <summary>Addresses asked for, the page's own file and what it carries itself left aside.</summary>
    public IEnumerable<string> Requests => _requests.Where(r => !r.StartsWith("file:", StringComparison.Ordinal)
        && !r.StartsWith("data:", StringComparison.Ordinal) && !r.StartsWith("blob:", StringComparison.Ordinal));

    public string Said => Page.Locator("#said").InnerTextAsync().GetAwaiter().GetResult();

    public ILocator Place(string actuator, string position) => Page.Locator("fieldset", new() { Has = Page.Locator("legend b", new() { HasTextString = actuator }) })
        .GetByRole(AriaRole.Button, new() { NameRegex = new($"^{position}( hold)?( locked)?$") });

    public async ValueTask DisposeAsync() => await Page.Context.CloseAsync();
}
