using Microsoft.Playwright;
using Schematic.Bench.Readings;
using Schematic.Page;
using Schematic.Text;
using UglyToad.PdfPig;
using Xunit;

namespace Schematic.Tests.Page;

/// <summary>What a person does with the page, done in a browser.</summary>
public class PageOperationTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    private const string Lever = "lever-frame/lever.panel";
    private const string Latch = "relay-latch/latch.panel";

    private static Task<string?> StateOf(OpenedPage page, string owner) =>
        page.Page.Locator($"#circuit g[data-role=symbol][data-owner='{owner}']").First.GetAttributeAsync("data-state");

    [BrowserFact]
    public async Task A_locked_lever_says_what_holds_it_and_moves_once_the_lock_is_fed()
    {
        await using var page = await browser.OpenExample(Lever);
        await page.Place("LEVER", "check").ClickAsync();
        Assert.Equal("LEVER is locked at normal: the lock holds it until L1 energised. To release it: hold BUTTON at pressed.", page.Said);
        Assert.Equal("true", await page.Place("LEVER", "normal").GetAttributeAsync("aria-pressed"));
        Assert.Equal("on", await StateOf(page, "DS1"));

        await page.Place("BUTTON", "pressed").ClickAsync();
        Assert.Equal("on", await StateOf(page, "L1"));
        await page.Place("LEVER", "reverse").ClickAsync();
        Assert.Equal("LEVER stands at reverse.", page.Said);
        Assert.Null(await StateOf(page, "DS1"));
        Assert.Equal("on", await StateOf(page, "DS2"));
    }

    [BrowserFact]
    public async Task The_grip_past_its_stop_brings_the_input_low_and_springs_back_when_let_go()
    {
        await using var page = await browser.OpenExample(Lever);
        Assert.Equal("high", await StateOf(page, "A1:IN3"));
        await page.Place("GRIP", "left-stop").ClickAsync();
        Assert.Equal("GRIP is held at left-stop.", page.Said);
        Assert.Equal("low", await StateOf(page, "A1:IN3"));
        await page.Place("GRIP", "left-stop").ClickAsync();
        Assert.Equal("GRIP springs back to left.", page.Said);
        Assert.Equal("high", await StateOf(page, "A1:IN3"));
    }

    [BrowserFact]
    public async Task A_tap_on_the_drawing_moves_an_actuator_and_lets_it_go_again()
    {
        await using var page = await browser.OpenExample(Lever);
        var button = page.Page.Locator("#circuit g[data-role=symbol][data-owner=BUTTON] path").First;
        await button.ClickAsync(new() { Force = true });
        Assert.Equal("BUTTON is held at pressed.", page.Said);
        await button.ClickAsync(new() { Force = true });
        Assert.Equal("BUTTON springs back to released.", page.Said);
    }

    [BrowserFact]
    public async Task Relays_settle_one_after_the_other_and_by_hand_step_by_step()
    {
        await using var page = await browser.OpenExample(Latch);
        await page.Page.GetByLabel("relays step by step").CheckAsync();
        await page.Place("RING", "pressed").ClickAsync();
        Assert.Null(await StateOf(page, "DS1"));
        await page.Page.GetByRole(AriaRole.Button, new() { Name = "Next: K1 operated" }).ClickAsync();
        Assert.Equal("K1 is operated.", page.Said);
        Assert.Equal("on", await StateOf(page, "DS1"));

        await page.Page.GetByLabel("relays step by step").UncheckAsync();
        await page.Place("RING", "pressed").ClickAsync();
        Assert.Equal("on", await StateOf(page, "DS1"));
        await page.Place("SILENCE", "pressed").ClickAsync();
        await Assertions.Expect(page.Page.Locator("#said")).ToHaveTextAsync("K1 is released.", new() { Timeout = PageBrowser.PatienceMs });
        Assert.Null(await StateOf(page, "DS1"));
    }

    /// <summary>A relay whose contact follows late, a switch of which nobody knows where it closes, a knob that is pushed to be turned.</summary>
    private const string Supposed = """
        title "Delays and suppositions"
        actuator SW { off rest ; on }
        actuator KNOB "dimmer" push-to-turn { low rest ; high }
        supply PS1 24 V limit 1 A { + - }
        switch S1 make on SW when on
        switch S2 make on KNOB when high
        switch S9 make on SW when ?
        relay K1 24 V 800 ohm suppressed operates 18 V on-delay 0.5..1 s { delayed-make }
        lamp DS1 24 V 40 mA
        lamp DS2 24 V 40 mA
        lamp DS3 24 V 40 mA
        net A PS1:+ S1:1 S2:1 S9:1 K1:17
        net B S1:2 K1:A1
        net C K1:18 DS1:X1
        net D S9:2 DS2:X1
        net E S2:2 DS3:X1
        net R PS1:- K1:A2 DS1:X2 DS2:X2 DS3:X2
        """;

    [BrowserFact]
    public async Task Delays_end_when_asked_what_is_not_known_is_supposed_and_a_knob_is_pushed_to_turn()
    {
        await using var page = await browser.Open(PanelPage.Write(new PageRequest(TestPanels.Load(Supposed), [])));
        await page.Place("SW", "on").ClickAsync();
        var wait = page.Page.Locator("#waits").GetByRole(AriaRole.Button, new() { Name = "Wait until the delay of K1 is over" });
        await wait.WaitForAsync();
        Assert.Equal("on", await StateOf(page, "K1"));
        Assert.Null(await StateOf(page, "DS1"));
        await wait.ClickAsync();
        Assert.Equal("The delay of K1 is over: its delayed contacts are delayed-operated.", page.Said);
        Assert.Equal("on", await StateOf(page, "DS1"));

        Assert.Null(await StateOf(page, "DS2"));
        await page.Page.GetByLabel("S9 at on").SelectOptionAsync("closed");
        Assert.Equal("Supposed: S9 at on, closed.", page.Said);
        Assert.Equal("on", await StateOf(page, "DS2"));

        Assert.Contains("push to turn", await page.Page.Locator("#controls").InnerTextAsync(), StringComparison.Ordinal);
        await page.Place("KNOB", "high").ClickAsync();
        Assert.Equal("KNOB is pushed, turned and stands at high.", page.Said);
        Assert.Equal("on", await StateOf(page, "DS3"));
        Assert.Empty(page.Complaints);
    }

    [BrowserFact]
    public async Task A_wire_that_is_chosen_lights_everywhere_and_tells_its_ends_colour_gauge_and_length()
    {
        await using var page = await browser.OpenExample(Lever);
        await page.Page.GetByLabel("Find a designator").FillAsync("w17");
        await page.Page.Keyboard.PressAsync("Enter");
        var chosen = await page.Page.Locator("#chosen").InnerTextAsync();
        foreach (var word in new[] { "Wire W17", "P1:5", "A1:IN1", "WH", "24 AWG", "500 mm", "return; 0.0 V against PS1:-" }) Assert.Contains(word, chosen, StringComparison.Ordinal);
        foreach (var place in new[] { "Circuit, sheet", "Wiring, sheet", "Wire list" }) Assert.Contains(place, chosen, StringComparison.Ordinal);
        Assert.NotEqual(0, await page.Page.Locator("#circuit .halo.chosen").CountAsync());
        Assert.NotEqual(0, await page.Page.Locator("#wiring .halo.chosen").CountAsync());
        Assert.NotEqual(0, await page.Page.Locator("#faces .halo.joined").CountAsync());
        Assert.NotEqual(0, await page.Page.Locator("#lists .name[data-lit=chosen]").CountAsync());

        await page.Page.Locator("#chosen").GetByRole(AriaRole.Button, new() { Name = "P1:5", Exact = true }).First.ClickAsync();
        Assert.NotEqual(0, await page.Page.Locator("#faces .halo.chosen").CountAsync());
    }

    [BrowserFact]
    public async Task The_page_is_worked_by_keyboard_alone()
    {
        await using var page = await browser.OpenExample(Lever);
        await page.Page.Locator("#circuit svg [tabindex='0']").First.FocusAsync();
        await page.Page.Keyboard.PressAsync("Enter");
        Assert.NotEqual(0, await page.Page.Locator("#circuit [aria-pressed=true]").CountAsync());
        var first = await page.Page.EvaluateAsync<string>("() => document.activeElement.dataset.key");
        await page.Page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(first, await page.Page.EvaluateAsync<string>("() => document.activeElement.dataset.key"));
        await page.Page.EvaluateAsync("() => [...document.querySelectorAll('#circuit [data-key=\"actuator BUTTON\"]')][0].focus()");
        await page.Page.Keyboard.PressAsync("Space");
        Assert.Equal("BUTTON is held at pressed.", page.Said);
    }

    [BrowserTheory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task The_cross_of_a_lit_lamp_is_seen_on_its_disc(ColorScheme scheme)
    {
        await using var page = await browser.OpenExample(Latch, new() { ColorScheme = scheme });
        await page.Place("RING", "pressed").ClickAsync();
        await page.Page.Locator("#circuit g[data-role=symbol][data-owner=DS1][data-state=on]").First.WaitForAsync();
        Task<string> Colour(string what, string property) => page.Page.Locator($"#circuit g[data-role=symbol][data-owner=DS1] {what}").First
            .EvaluateAsync<string>("(one, property) => getComputedStyle(one)[property]", property);
        Assert.NotEqual(await Colour("circle", "fill"), await Colour("path:not([d$=Z])", "stroke"));
    }

    [BrowserFact]
    public async Task A_face_is_turned_over()
    {
        await using var page = await browser.OpenExample(Lever);
        var face = page.Page.Locator("#face-J1");
        Assert.True(await face.Locator("[data-side=rear]").IsVisibleAsync());
        Assert.False(await face.Locator("[data-side=front]").IsVisibleAsync());
        await face.GetByRole(AriaRole.Button, new() { NameRegex = new("Turn over") }).ClickAsync();
        Assert.False(await face.Locator("[data-side=rear]").IsVisibleAsync());
        Assert.True(await face.Locator("[data-side=front]").IsVisibleAsync());
    }

    [BrowserFact]
    public async Task Readings_are_judged_kept_and_saved_as_a_readings_file_that_the_program_reads()
    {
        await using var page = await browser.OpenExample(Lever);
        var table = page.Page.Locator(".ring-out").First;
        await table.GetByLabel("Measured by").FillAsync("A \"careful\" warden");
        await table.GetByLabel("Step 1: as expected").CheckAsync();
        await table.GetByLabel("Step 2: what the meter shows").FillAsync("47 kohm");
        Assert.Contains("not as expected", await table.Locator("tbody tr").Nth(1).InnerTextAsync(), StringComparison.Ordinal);
        await table.GetByLabel("Step 3: what the meter shows").FillAsync("<script>");
        Assert.Contains("not understood", await table.Locator("tbody tr").Nth(2).InnerTextAsync(), StringComparison.Ordinal);

        await page.Page.ReloadAsync();
        Assert.Equal("47 kohm", await table.GetByLabel("Step 2: what the meter shows").InputValueAsync());
        var download = await page.Page.RunAndWaitForDownloadAsync(() => table.GetByRole(AriaRole.Button, new() { Name = "Save as a readings file" }).ClickAsync());
        Assert.Equal("lever-unit.readings", download.SuggestedFilename);
        var text = await File.ReadAllTextAsync(await download.PathAsync());

        Assert.Contains("by \"A \\\"careful\\\" warden\"", text, StringComparison.Ordinal);
        Assert.Contains(" 47 kohm ", text, StringComparison.Ordinal);
        var read = ReadingsLoader.Load(new SourceText("lever-unit.readings", text), PageBrowser.PanelOf(Lever));
        Assert.Empty(read.Diagnostics.Select(d => d.Message));
        Assert.Empty(page.Complaints);
    }

    [BrowserFact]
    public async Task The_page_prints_each_sheet_on_its_paper_and_everything_else_behind_it()
    {
        await using var page = await browser.OpenExample(Lever);
        var bytes = await page.Page.PdfAsync(new() { PreferCSSPageSize = true });
        using var pdf = PdfDocument.Open(bytes);
        var pages = pdf.GetPages().ToList();
        var sheets = await page.Page.Locator(".sheet").CountAsync();
        // A4 lying is 842 by 595 points.
        Assert.Equal(sheets, pages.Count(p => p.Width > p.Height));
        Assert.Equal(sheets, pages.Count(p => p.Text.Contains("Legal owner", StringComparison.Ordinal)));
        Assert.Contains(pages, p => p.Text.Contains("Wire list", StringComparison.Ordinal));
        Assert.Contains(pages, p => p.Text.Contains("Ring-out of", StringComparison.Ordinal));
        Assert.DoesNotContain(pages, p => p.Text.Contains("Back to rest", StringComparison.Ordinal) || p.Text.Contains("Turn over", StringComparison.Ordinal));
    }

    [BrowserFact]
    public async Task A_page_written_anew_is_taken_over_with_everything_as_it_stood()
    {
        await using var page = await browser.OpenExample(Lever);
        await page.Place("GRIP", "left-stop").ClickAsync();
        await page.Page.GetByLabel("Find a designator").FillAsync("W17");
        await page.Page.Keyboard.PressAsync("Enter");
        await page.Page.Locator("#face-P1").GetByRole(AriaRole.Button, new() { NameRegex = new("Turn over") }).ClickAsync();
        var scroll = await page.Page.EvaluateAsync<double>("() => window.scrollY");
        var text = PageBrowser.HtmlOf(Lever).Replace("Lever 14 simulator adapter", "Lever 15 änderung", StringComparison.Ordinal);
        await page.Page.EvaluateAsync("text => window.schematicPage.replace(text)", text);

        Assert.Equal("Lever 15 änderung", await page.Page.Locator("h1").InnerTextAsync());
        Assert.Equal("Lever 15 änderung", await page.Page.TitleAsync());
        Assert.Equal("true", await page.Place("GRIP", "left-stop").GetAttributeAsync("aria-pressed"));
        Assert.Equal("low", await StateOf(page, "A1:IN3"));
        Assert.Contains("Wire W17", await page.Page.Locator("#chosen").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await page.Page.Locator("#face-P1 [data-side=front]").IsVisibleAsync());
        Assert.InRange(await page.Page.EvaluateAsync<double>("() => window.scrollY"), scroll - 1, scroll + 1);
        Assert.Empty(page.Complaints);
    }
}
