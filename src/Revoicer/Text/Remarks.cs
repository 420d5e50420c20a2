using Revoicer.Values;

namespace Revoicer.Text;

/// <summary>Collects what is wrong and what is noteworthy while a file is read.</summary>
internal sealed class Remarks
{
    private readonly List<Problem> _problems = [];
    private readonly List<Problem> _warnings = [];
    private readonly HashSet<string> _told = [];

    /// <summary>Whether the file cannot be read.</summary>
    public bool HasProblems => _problems.Count > 0;

    /// <summary>Whether reading on would tell nothing that anyone reads.</summary>
    public bool IsFull => _problems.Count > FirstProblems.Most;

    public Items<Problem> Problems => FirstProblems.Of(_problems);

    public Items<Problem> Warnings => FirstProblems.Of(_warnings);

    public void Refuse(Place where, string found, string expected) => _problems.Add(new Problem(where, found, expected));

    public void Refuse(IEnumerable<Problem> problems) => _problems.AddRange(problems);

    public void Warn(Place where, string found, string expected)
    {
        if (_warnings.Count <= FirstProblems.Most)
        {
            _warnings.Add(new Problem(where, found, expected));
        }
    }

    public void Warn(IEnumerable<Problem> warnings)
    {
        foreach (var warning in warnings)
        {
            Warn(warning.Where, warning.Found, warning.Expected);
        }
    }

    /// <summary>Takes what another reading of the same file tells and this one has not told yet.</summary>
    public void TakeNew(Remarks other)
    {
        Refuse(other._problems.Except(_problems).ToArray());
        Warn(other._warnings.Except(_warnings).Where(w => !_told.Contains(w.Found)).ToArray());
        _told.UnionWith(other._told);
    }

    /// <summary>Warns at the first place alone of what may stand at many.</summary>
    public void WarnOnce(Place where, string found, string expected)
    {
        if (_told.Count <= FirstProblems.Most && _told.Add(found))
        {
            Warn(where, found, expected);
        }
    }
}
