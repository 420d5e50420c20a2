using Revoicer.Bells;
using Revoicer.Cli.Files;
using Revoicer.Cli.Settings;
using Revoicer.LeadSheets.Wishes;
using Revoicer.Sounds;

namespace Revoicer.Cli.Drafts;

/// <summary>What a draft is made with, read.</summary>
/// <param name="Tower">The tower.</param>
/// <param name="Sound">The sound.</param>
/// <param name="Wishes">The player's wishes.</param>
internal sealed record DraftSettings(Settings<Tower> Tower, Settings<Sound> Sound, PlayerWishes Wishes)
{
    /// <summary>Opens all of them; null, with every problem told, where one cannot be read.</summary>
    public static DraftSettings? Open(DraftRequest request, TextWriter error)
    {
        var tower = SettingsKinds.Tower.Open(request.Tower, error);
        var sound = SettingsKinds.Sound.Open(request.Sound, error);
        var wishes = WishesFile.Read(request.Wishes, error);
        return tower is null || sound is null || wishes is null ? null : new DraftSettings(tower, sound, wishes);
    }
}
