/** Over the list and the map: which of the two, how many trees, and saving them as a file. */
import { listCsvHead, listCsvLine, listGeoJson } from '@standfast/casefile';
import { Download, List, Map as MapIcon } from 'lucide-react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { Link } from 'wouter';
import { today } from '../../state/bringIn.ts';
import { fileNameOf, offerDownload } from '../../storage/fileName.ts';
import type { ListEntry } from '../../storage/summaries.ts';

interface ListHeadProps {
  here: 'list' | 'map';
  shown: readonly ListEntry[];
  total: number;
}

export function ListHead({ here, shown, total }: ListHeadProps) {
  const save = (kind: string) => {
    const rows = shown.map(({ row }) => row);
    if (kind === 'csv') {
      const text = listCsvHead() + rows.map(listCsvLine).join('');
      offerDownload(text, fileNameOf('work list', today(), 'csv'), 'text/csv');
    } else {
      offerDownload(listGeoJson(rows), fileNameOf('work list', today(), 'geojson'), 'application/geo+json');
    }
  };
  const count = shown.length === total ? `${total}` : `${shown.length} of ${total}`;
  return (
    <div className="list-head">
      <h2>
        Cases <span className="list-count">{count}</span>
      </h2>
      <nav aria-label="List or map" className="list-tabs">
        <Link href="/" className="list-tab" aria-current={here === 'list' ? 'page' : undefined}>
          <List aria-hidden /> List
        </Link>
        <Link href="/map" className="list-tab" aria-current={here === 'map' ? 'page' : undefined}>
          <MapIcon aria-hidden /> Map
        </Link>
      </nav>
      <MenuTrigger>
        <Button className="button" isDisabled={shown.length === 0}>
          <Download aria-hidden /> Save the list
        </Button>
        <Popover className="popover" placement="bottom end">
          <Menu className="menu" onAction={(key) => save(String(key))}>
            <MenuItem id="csv" className="menu-item">
              As CSV, for a spreadsheet
            </MenuItem>
            <MenuItem id="geojson" className="menu-item">
              As GeoJSON, for a map
            </MenuItem>
          </Menu>
        </Popover>
      </MenuTrigger>
    </div>
  );
}
