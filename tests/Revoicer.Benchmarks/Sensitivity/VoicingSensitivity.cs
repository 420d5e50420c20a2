using System.Globalization;
using Revoicer.Bells;
using Revoicer.Clashes;
using Revoicer.LeadSheets;
using Revoicer.Prices;
using Revoicer.Solving;
using Revoicer.Solving.Rules;
using Revoicer.Sounds;
using Revoicer.Values;

namespace Revoicer.Benchmarks.Sensitivity;

/// <summary>
/// Prints how often the voicing chosen for each chord of some sheets changes when the default bell, the fade or the radiated
/// level is changed within what is not known of it, and how much more the draft of the default bell would then cost than the
/// best that is found.
/// </summary>
internal static class VoicingSensitivity
{
    private const int Draws = 20;

    public static int Print(IReadOnlyList<string> files)
    {
        var sheets = files.Select(SheetFiles.Read).ToArray();
        if (sheets.Any(s => s is null))
        {
            return 2;
        }

        var drafts = sheets.Select(s => new DefaultDraft(s!)).ToArray();
        Console.WriteLine($"| what is changed | {string.Join(" | ", drafts.Select(d => d.Title))} |");
        Console.WriteLine($"|---|{string.Concat(Enumerable.Repeat("---|", drafts.Length))}");
        foreach (var (words, trials) in Trials())
        {
            var cells = drafts.Select(draft => Cell([.. trials.Select(draft.Under)]));
            Console.WriteLine($"| {words} | {string.Join(" | ", cells)} |");
        }

        foreach (var draws in BellDraws.All[..2])
        {
            var cells = sheets.Select(sheet => TowerFileSensitivity.Cell(sheet!, draws));
            Console.WriteLine($"| {draws.Letter}, through a tower file, {TowerFileSensitivity.Draws} whole drafts | {string.Join(" | ", cells)} |");
        }

        foreach (var draft in drafts)
        {
            draft.PrintChords();
        }

        return 0;
    }

    private static IEnumerable<(string Words, Trial[] Trials)> Trials()
    {
        var standard = new Trial(BellLaw.Default, ShippedSounds.Default.Fade, Listener.Default);
        foreach (var draws in BellDraws.All)
        {
            yield return ($"{draws.Letter}: {draws.Words}", [.. draws.Laws(Draws).Select(law => standard with { Law = law, Counts = draws == BellDraws.All[^2] })]);
        }

        yield return ("no fade", [standard with { Fade = null }]);
        yield return ("fade 0.6 s", [standard with { Fade = new Seconds(0.6) }]);
        yield return ("fade 2.4 s", [standard with { Fade = new Seconds(2.4) }]);
        foreach (var perOctave in new[] { 0, -2, -6 })
        {
            yield return ($"radiated level {perOctave} dB an octave", [standard with { Listener = Listener.Default with { RadiatedPerOctave = new Decibels(perOctave) } }]);
        }
    }

    // Shares of chords with other bells, and with another bass bell; by how much more the default draft costs, in the median.
    private static string Cell(Change[] changes)
    {
        var costsMore = changes.Select(c => c.CostsMore).Order().ElementAt(changes.Length / 2);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{changes.Average(c => c.Bells):0.00}, bass {changes.Average(c => c.Bass):0.00}, +{100 * costsMore:0.0} %");
    }

    private sealed record Trial(BellLaw Law, Seconds? Fade, Listener Listener)
    {
        public bool Counts { get; init; }
    }

    private readonly record struct Change(double Bells, double Bass, double CostsMore);

    private sealed class DefaultDraft
    {
        private readonly ListedSheet _listed;
        private readonly int[] _choice;
        private readonly int[] _changed;
        private int _counted;

        public DefaultDraft(LeadSheet sheet)
        {
            Title = sheet.Title;
            _listed = ListedSheet.Of(sheet);
            _choice = Search(new Trial(BellLaw.Default, ShippedSounds.Default.Fade, Listener.Default)).Choice;
            _changed = new int[_choice.Length];
        }

        public string Title { get; }

        public Change Under(Trial trial)
        {
            var (choice, price, prices) = Search(trial);
            var bells = new bool[choice.Length];
            var bass = new bool[choice.Length];
            for (var slot = 0; slot < choice.Length; slot++)
            {
                var (before, now) = (_listed.Candidates[slot][_choice[slot]].Voicing, _listed.Candidates[slot][choice[slot]].Voicing);
                bells[slot] = !before.Notes.SequenceEqual(now.Notes);
                bass[slot] = before.Bass != now.Bass;
                _changed[slot] += trial.Counts && bells[slot] ? 1 : 0;
            }

            _counted += trial.Counts ? 1 : 0;
            // The search proves nothing here: where it finds nothing cheaper, the draft counts as costing no more.
            var whole = prices.Whole(_choice);
            return new Change(bells.Average(b => b ? 1.0 : 0), bass.Average(b => b ? 1.0 : 0), Math.Max(0, (whole - price) / (double)price));
        }

        public void PrintChords()
        {
            Console.WriteLine();
            Console.WriteLine($"{Title}: share of {_counted} draws ({BellDraws.All[^2].Words}) in which a chord has other bells");
            foreach (var slot in _listed.Plan.Slots)
            {
                var notes = string.Join(' ', _listed.Candidates[slot.Index][_choice[slot.Index]].Voicing.Notes);
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {slot.Place}, {slot.Symbol}, {notes}: {_changed[slot.Index] / (double)_counted:0.00}"));
            }
        }

        private (int[] Choice, long Price, SheetPrices Prices) Search(Trial trial)
        {
            var sound = ShippedSounds.Default with { Fade = trial.Fade };
            var instrument = new Instrument(ShippedTowers.Default.Under(trial.Law), sound, trial.Listener);
            var prices = SheetPrices.Of(instrument, sound, _listed.Plan, _listed.Candidates, CancellationToken.None);
            var found = (Outcome.Found)Solving.Search.Run(prices, SoundRules.Of(sound), ProofEffort.Quick, CancellationToken.None);
            return ([.. found.Choice], found.Price, prices);
        }
    }
}
