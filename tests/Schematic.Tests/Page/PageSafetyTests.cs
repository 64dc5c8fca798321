using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Schematic.Binding;
using Schematic.Cli.Watch;
using Schematic.Model;
using Schematic.Page;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Page;

/// <summary>What the page never does, and who it is for.</summary>
public partial class PageSafetyTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private const string Attack = "</script><script>alert(1)</script><img src=x onerror=alert(2)>'\\\" onload=alert(3) <!-- {{7*7}} ${alert(4)} &lt;b&gt; </style></title><svg/onload=alert(5)>";

    public static TheoryData<string> Examples => [.. PageBrowser.Examples];

    /// <summary>Rules of WCAG 2.0 to 2.2, levels A and AA, as the axe engine has them.</summary>
    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
    };

    [BrowserTheory]
    [InlineData("relay-latch/latch.panel", ColorScheme.Light, 1300)]
    [InlineData("relay-latch/latch.panel", ColorScheme.Dark, 1300)]
    [InlineData("dsub-breakout/breakout.panel", ColorScheme.Light, 360)]
    [InlineData("dsub-breakout/breakout.panel", ColorScheme.Dark, 360)]
    public async Task The_rules_of_accessibility_are_kept(string example, ColorScheme scheme, int width)
    {
        await using var page = await browser.OpenExample(example, new() { ColorScheme = scheme, ViewportSize = new() { Width = width, Height = 800 } });
        if (width < 500) await page.Page.GetByRole(AriaRole.Button, new() { Name = "Controls" }).ClickAsync();
        await page.Page.GetByLabel("Find a designator").FillAsync("W1");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.GetByLabel("Find a designator").FillAsync("W");
        // Rows of tables and faces repeat one another; a few of each will do.
        var found = await page.Page.RunAxe(new AxeRunContext { Include = [new("body")], Exclude = [new("tbody tr:nth-child(n+4)"), new("figure.face:nth-of-type(n+2)")] }, Rules);
        Assert.Empty(found.Violations.SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {v.Help}: {n.Html}")));
        // The page itself never scrolls sideways: what is wide scrolls in a box of its own.
        Assert.True(await page.Page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= window.innerWidth"));
    }

    [BrowserTheory]
    [MemberData(nameof(Examples))]
    public async Task Nothing_is_asked_of_any_network_and_nothing_is_complained_of(string example)
    {
        await using var page = await browser.OpenExample(example, new() { Offline = true });
        await page.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Turn over") }).Or(page.Page.Locator("#find")).First.ClickAsync();
        Assert.Empty(page.Requests);
        Assert.Empty(page.Complaints);
    }

    [BrowserFact]
    public async Task Script_in_any_text_of_a_panel_stays_text()
    {
        await using var page = await browser.Open(HostilePage.Value);
        await page.Page.GetByLabel("Find a designator").FillAsync("alert");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.EvaluateAsync("text => window.schematicPage.replace(text)", HostilePage.Value);
        foreach (var button in await page.Page.Locator("#controls button").AllAsync()) await button.ClickAsync();
        Assert.Equal(0, await page.Page.Locator("img, iframe, object, embed, #content script, [onload], [onerror]").CountAsync());
        Assert.Contains("alert(1)", await page.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(page.Complaints);
        Assert.Empty(page.Requests);
    }

    /// <summary>Every quoted text that the language has: those of two examples, and statements for the words that they do not use.</summary>
    [BrowserFact]
    public async Task Script_in_every_quoted_text_of_a_file_stays_text()
    {
        var operated = AttackedPages.Value[0];
        var html = string.Concat(AttackedPages.Value);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<svg/", html, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(4, ScriptElement().Count(html));
        await using var page = await browser.Open(operated);
        await page.Page.GetByLabel("Find a designator").FillAsync("alert");
        await page.Page.Keyboard.PressAsync("Enter");
        Assert.Equal(0, await page.Page.Locator("img, iframe, object, embed, #content script, [onload], [onerror]").CountAsync());
        Assert.Contains("alert(1)", await page.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(page.Complaints);
    }

    /// <summary>The same through the preview: in the page that is served, in the one that replaces it, in the findings beside it.</summary>
    [BrowserFact]
    public async Task Script_in_every_quoted_text_stays_text_in_the_preview()
    {
        var board = new PreviewBoard();
        Preview Shown(int version, string? trouble) => new(version, version, Served.Value[version - 1], AttackedPanel(AttackedExamples[version - 1]).Diagnostics, trouble);
        board.Show(Shown(1, null));
        using var server = PreviewServer.Start(board, null)!;
        await using var page = await browser.OpenAddress(server.Address);
        await page.Page.Locator("#preview li").First.WaitForAsync();
        await page.Page.EvaluateAsync("() => { document.body.dataset.kept = 'yes'; }");
        board.Show(Shown(2, Attack));
        await page.Page.Locator("#preview p", new() { HasTextString = "alert(1)" }).WaitForAsync();
        Assert.Equal("yes", await page.Page.EvaluateAsync<string>("() => document.body.dataset.kept"));
        Assert.Equal(0, await page.Page.Locator("img, iframe, object, embed, #content script, #preview script, [onload], [onerror]").CountAsync());
        Assert.Contains("alert(1)", await page.Page.Locator("#preview li").First.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("alert(1)", await page.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(page.Complaints);
        Assert.All(page.Requests, r => Assert.StartsWith(server.Address, r, StringComparison.Ordinal));
    }

    private static readonly string[] AttackedExamples = ["engine-order/engine-order.panel", "signal-lamp/signal-lamp.panel"];

    private static readonly Lazy<string[]> AttackedPages = new(() => [.. AttackedExamples.Select(e => Attacked(e))]);

    private static readonly Lazy<string[]> Served = new(() => [.. AttackedExamples.Select((e, i) => Attacked(e, PreviewScript.For(i + 1)))]);

    private static readonly Lazy<string> HostilePage = new(() => PanelPage.Write(new PageRequest(Hostile(), []) { FileName = Attack + ".panel" }));

    /// <summary>The page of an example with the attack between every two quotation marks, and in what is found in it.</summary>
    private static string Attacked(string example, string script = "")
    {
        var loaded = AttackedPanel(example);
        return PanelPage.Write(new PageRequest(loaded.Panel, loaded.Diagnostics) { FileName = Attack + ".panel", AddedScript = script, ConnectsToItsServer = script.Length > 0 });
    }

    private static LoadResult AttackedPanel(string example)
    {
        var text = QuotedText().Replace(File.ReadAllText(Repository.PathOf("examples/" + example)), $"\"{Quoted}\"") + $$"""
            approved "{{Quoted}}"  caution "{{Quoted}}"
            caution "{{Quoted}}"
            note "{{Quoted}}"
            connector J91 "{{Quoted}}" order "{{Quoted}}" { pins ; strip 4 pitch 5.08 mm ; source "{{Quoted}}" ; spare 1..4 }
            lamp DS91 "{{Quoted}}" 24 V 40 mA order "{{Quoted}}" price 1 EUR
            alternative DS91 "{{Quoted}}" price 2 EUR
            cable C91 "{{Quoted}}" 12 m order "{{Quoted}}" { WH }
            readings "{{Quoted}}"
            use "{{Quoted}}" as U91
            lmap "{{Quoted}}"

            """;
        return PanelLoader.Load(new SourceText(Attack + ".panel", text), MemoryPanelFiles.None);
    }

    private static string Quoted => Attack.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal);

    [BrowserFact]
    public async Task A_script_that_gets_into_the_document_all_the_same_is_not_run()
    {
        await using var page = await browser.OpenExample("relay-latch/latch.panel");
        await page.Page.EvaluateAsync("""
            () => {
              const script = document.createElement('script');
              script.textContent = 'window.wasRun = true';
              document.body.append(script);
              document.body.insertAdjacentHTML('beforeend', '<img src="data:image/png;base64,x" onerror="window.wasRun = true">');
            }
            """);
        Assert.False(await page.Page.EvaluateAsync<bool>("() => window.wasRun === true"));
        Assert.Contains(page.Complaints, c => c.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_text_of_a_panel_is_escaped_where_it_stands()
    {
        var html = HostilePage.Value;
        Assert.Equal(2, ScriptElement().Count(html));
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<svg/", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("unsafe", PolicyLine().Match(html).Value, StringComparison.Ordinal);
    }

    [Fact]
    public void A_script_that_could_end_its_element_is_not_taken() => Assert.Throws<ArgumentException>(() =>
        PanelPage.Write(new PageRequest(TestPanels.Load("lamp DS1 24 V\n"), []) { AddedScript = "'</script>'" }));

    /// <summary>The example with the attack in every text that a file can state: titles, descriptions, meanings, orders, notes.</summary>
    private static Panel Hostile()
    {
        var panel = PageBrowser.PanelOf("lever-frame/lever.panel");
        return panel with
        {
            Title = panel.Title with { Title = Attack, Number = Attack, Revision = Attack, Owner = Attack, DrawnBy = Attack, ApprovedBy = Attack, Date = Attack },
            Cautions = [Attack],
            Nets = [.. panel.Nets.Select((n, i) => n with { Name = $"N{i} {Attack}" })],
            Wires = [.. panel.Wires.Select((w, i) => w with { Designator = $"W{i}{Attack}" })],
            Actuators = [.. panel.Actuators.Select(a => a with { Description = Attack })],
            Parts =
            [
                .. panel.Parts.Select(p => p with { Description = Attack, OrderText = Attack }).Select(p => p is Board board
                    ? board with { Inputs = [.. board.Inputs.Select(i => i with { Meaning = Attack })] } : p),
            ],
        };
    }

    [GeneratedRegex("\"[^\"\n]*\"")]
    private static partial Regex QuotedText();

    [GeneratedRegex("<script", RegexOptions.IgnoreCase)]
    private static partial Regex ScriptElement();

    [GeneratedRegex("Content-Security-Policy[^>]*>")]
    private static partial Regex PolicyLine();
}
